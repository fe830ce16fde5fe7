package io.github.tiderule.api.service.http;

import io.github.tiderule.api.access.Person;
import io.github.tiderule.api.record.Ledger;
import java.time.Instant;

/** By whom the record is changed, and when: one request, or one command. */
public interface Hand {

  /** Who changes it. */
  Person person();

  /** The moment of it. */
  Instant now();

  /** Notes in the audit log what is done. */
  void note(Ledger ledger, String deed, String about, String female);
}
