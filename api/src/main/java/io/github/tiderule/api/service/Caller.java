package io.github.tiderule.api.service;

import io.github.tiderule.api.access.Person;
import io.github.tiderule.api.access.Sessions;
import org.jspecify.annotations.Nullable;

/**
 * Who asks.
 *
 * @param known absent when nobody is signed in
 * @param session absent unless signed in with a session
 * @param address network address
 */
record Caller(@Nullable Person known, Sessions.@Nullable Session session, String address) {

  /**
   * The person.
   *
   * @throws Refusal when nobody is signed in
   */
  Person person() {
    if (known == null) {
      throw Refusal.notSignedIn("Send a session or a token.");
    }
    return known;
  }
}
