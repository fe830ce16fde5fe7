package io.github.tiderule.api.command;

import io.github.tiderule.api.access.Audit;
import io.github.tiderule.api.access.Person;
import io.github.tiderule.api.record.Ledger;
import io.github.tiderule.api.service.http.Hand;
import java.time.Instant;

/** Whoever changes the record by a command. */
record Terminal(Person person, Instant now) implements Hand {

  @Override
  public void note(Ledger ledger, String deed, String about, String female) {
    Audit.of(ledger).note(person, deed, about, female, null, now);
  }
}
