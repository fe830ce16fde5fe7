package io.github.tiderule.api.record;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;

/**
 * Answers to requests that carried a key of their own, so that a request that comes twice is
 * carried out once. They are kept for seven days.
 */
public final class KeptAnswers {

  /** How long an answer is kept. */
  public static final Duration KEPT = Duration.ofDays(7);

  /**
   * An answer.
   *
   * @param fingerprint of the request it belongs to
   * @param status a number the asker understands
   * @param location where what was made can be found
   * @param tag the version of what was made
   */
  public record Kept(
      String fingerprint,
      int status,
      @Nullable String body,
      @Nullable String location,
      @Nullable String tag) {}

  private final Handle handle;

  KeptAnswers(Handle handle) {
    this.handle = handle;
  }

  /**
   * Takes a key for a request, or gives the answer of the request that has it. Whoever takes the
   * same key at the same moment waits for this piece of work to end.
   */
  public Optional<Kept> take(String person, String key, String fingerprint, Instant now) {
    handle
        .createUpdate("DELETE FROM kept_answer WHERE at < :oldest")
        .bind("oldest", now.minus(KEPT).toEpochMilli())
        .execute();
    int taken =
        handle
            .createUpdate(
                "INSERT INTO kept_answer (person, idempotency_key, fingerprint, status, at)"
                    + " VALUES (:person, :key, :fingerprint, 0, :now) ON CONFLICT DO NOTHING")
            .bind("person", person)
            .bind("key", key)
            .bind("fingerprint", fingerprint)
            .bind("now", now.toEpochMilli())
            .execute();
    if (taken == 1) {
      return Optional.empty();
    }
    return handle
        .createQuery("SELECT * FROM kept_answer WHERE person = :person AND idempotency_key = :key")
        .bind("person", person)
        .bind("key", key)
        .map(
            (row, context) ->
                new Kept(
                    row.getString("fingerprint"),
                    row.getInt("status"),
                    row.getString("body"),
                    row.getString("location"),
                    row.getString("tag")))
        .findOne();
  }

  /** Keeps the answer of a request that took its key in the same piece of work. */
  public void keep(String person, String key, Kept answer) {
    handle
        .createUpdate(
            "UPDATE kept_answer SET status = :status, body = :body, location = :location,"
                + " tag = :tag WHERE person = :person AND idempotency_key = :key")
        .bind("status", answer.status())
        .bind("body", answer.body())
        .bind("location", answer.location())
        .bind("tag", answer.tag())
        .bind("person", person)
        .bind("key", key)
        .execute();
  }
}
