package io.github.tiderule.api.service.http;

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
public record Caller(@Nullable Person known, Sessions.@Nullable Session session, String address) {

  /** Whoever it may be. */
  public static Caller unknown(String address) {
    return new Caller(null, null, address);
  }

  /**
   * The person.
   *
   * @throws Refusal when nobody is signed in
   */
  public Person person() {
    if (known == null) {
      throw Refusal.notSignedIn("Send a session or a token.");
    }
    return known;
  }
}
