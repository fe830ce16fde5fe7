package io.github.tiderule.api.record;

import java.time.Instant;
import org.jdbi.v3.core.Handle;

/** What females and cycles were said to be, each time somebody said it. */
final class Revisions {

  private final Handle handle;

  Revisions(Handle handle) {
    this.handle = handle;
  }

  void add(String subject, int version, String document, String person, Instant now) {
    handle
        .createUpdate(
            "INSERT INTO revision (subject, version, document, person, at)"
                + " VALUES (:subject, :version, :document, :person, :now)")
        .bind("subject", subject)
        .bind("version", version)
        .bind("document", document)
        .bind("person", person)
        .bind("now", now.toEpochMilli())
        .execute();
  }
}
