package io.github.tiderule.api.access;

import io.github.tiderule.api.record.Ledger;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.jdbi.v3.core.Handle;

/** Sessions of people who signed in. The record holds digests of their secrets only. */
public final class Sessions {

  /** How long a session lasts. */
  public static final Duration LASTS = Duration.ofHours(12);

  /**
   * A session.
   *
   * @param csrf what a page must send along with every change, so that no other site can make one
   */
  public record Session(String digest, String person, String csrf, Instant expiresAt) {}

  /**
   * A session just begun.
   *
   * @param secret what the browser keeps; it cannot be had again
   */
  public record Begun(String secret, Session session) {}

  private final Handle handle;

  private Sessions(Handle handle) {
    this.handle = handle;
  }

  /** The sessions of a record. */
  public static Sessions of(Ledger ledger) {
    return of(ledger.handle());
  }

  static Sessions of(Handle handle) {
    return new Sessions(handle);
  }

  /** Begins a session, and forgets those that are over. */
  public Begun begin(Person person, Instant now) {
    handle
        .createUpdate("DELETE FROM session WHERE expires_at <= :now")
        .bind("now", now.toEpochMilli())
        .execute();
    String secret = Secrets.next();
    Session session =
        new Session(Secrets.digest(secret), person.key(), Secrets.next(), now.plus(LASTS));
    handle
        .createUpdate(
            "INSERT INTO session (digest, person, csrf, created_at, expires_at)"
                + " VALUES (:digest, :person, :csrf, :now, :expiresAt)")
        .bind("digest", session.digest())
        .bind("person", session.person())
        .bind("csrf", session.csrf())
        .bind("now", now.toEpochMilli())
        .bind("expiresAt", session.expiresAt().toEpochMilli())
        .execute();
    return new Begun(secret, session);
  }

  /** The session of a secret, unless it is over. */
  public Optional<Session> find(String secret, Instant now) {
    return handle
        .createQuery("SELECT * FROM session WHERE digest = :digest AND expires_at > :now")
        .bind("digest", Secrets.digest(secret))
        .bind("now", now.toEpochMilli())
        .map(
            (row, context) ->
                new Session(
                    row.getString("digest"),
                    row.getString("person"),
                    row.getString("csrf"),
                    Instant.ofEpochMilli(row.getLong("expires_at"))))
        .findOne();
  }

  /** Ends a session. */
  public void end(Session session) {
    handle
        .createUpdate("DELETE FROM session WHERE digest = :digest")
        .bind("digest", session.digest())
        .execute();
  }

  void endAllOf(String person) {
    handle
        .createUpdate("DELETE FROM session WHERE person = :person")
        .bind("person", person)
        .execute();
  }
}
