package io.github.tiderule.api.record;

import io.github.tiderule.api.record.table.Conflict;
import java.time.Instant;
import java.util.Optional;
import org.jdbi.v3.core.Handle;

/**
 * What is the same for every season of somebody's kennel. Each change is a revision; the last one
 * stands.
 */
public final class Kennels {

  private static final String SUBJECT = "kennel:";

  private final Revisions revisions;

  Kennels(Handle handle) {
    this.revisions = new Revisions(handle);
  }

  /** What somebody said of the kennel last. */
  public Optional<Revision> of(String person) {
    return revisions.latest(SUBJECT + person);
  }

  /**
   * Says it anew.
   *
   * @param was the version it was thought of beside; 0 for none
   * @throws Conflict if it was changed since
   */
  public void change(String person, int was, String document, Instant now) {
    int last = of(person).map(Revision::version).orElse(0);
    if (last != was) {
      throw new Conflict(Conflict.Kind.CHANGED, "the kennel was changed meanwhile");
    }
    revisions.add(SUBJECT + person, was + 1, document, person, now);
  }
}
