package io.github.tiderule.api.access;

import io.github.tiderule.api.record.Cycle;
import io.github.tiderule.api.record.Ledger;
import io.github.tiderule.api.record.table.KeyedRows;
import io.github.tiderule.api.record.table.Keys;
import io.github.tiderule.api.record.table.Rows;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;

/**
 * Links by which a vet or a stud owner who is no user reads one season, for some days. The record
 * holds digests of their secrets only.
 */
public final class SeasonLinks {

  /**
   * A link.
   *
   * @param person key of who made it
   * @param label whom it is for
   * @param usedAt when it was opened last; absent when it never was
   */
  public record Link(
      String key,
      String cycle,
      String person,
      String label,
      Instant createdAt,
      Instant expiresAt,
      @Nullable Instant usedAt) {

    /** Whether it has ended. */
    public boolean isOver(Instant now) {
      return !expiresAt.isAfter(now);
    }
  }

  /**
   * A link just made.
   *
   * @param secret the part of it that nobody can guess; it cannot be had again
   */
  public record Made(String secret, Link link) {}

  private final Handle handle;
  private final KeyedRows<Link> rows;

  private SeasonLinks(Handle handle) {
    this.handle = handle;
    this.rows = KeyedRows.of(handle, "season_link", SeasonLinks::link, Link::key);
  }

  /** The links of a record. */
  public static SeasonLinks of(Ledger ledger) {
    return new SeasonLinks(ledger.handle());
  }

  private static Link link(ResultSet row) throws SQLException {
    return new Link(
        row.getString("id"),
        row.getString("cycle"),
        row.getString("person"),
        row.getString("label"),
        Rows.instant(row, "created_at"),
        Rows.instant(row, "expires_at"),
        Rows.maybeInstant(row, "used_at"));
  }

  /** Makes a link to a season that lasts so long. */
  public Made make(Person person, Cycle cycle, String label, Duration lasts, Instant now) {
    String secret = Secrets.next();
    Link link =
        new Link(Keys.next(now), cycle.key(), person.key(), label, now, now.plus(lasts), null);
    handle
        .createUpdate(
            "INSERT INTO season_link (id, cycle, person, digest, label, created_at, expires_at)"
                + " VALUES (:key, :cycle, :person, :digest, :label, :now, :expiresAt)")
        .bind("key", link.key())
        .bind("cycle", link.cycle())
        .bind("person", link.person())
        .bind("digest", Secrets.digest(secret))
        .bind("label", label)
        .bind("now", now.toEpochMilli())
        .bind("expiresAt", link.expiresAt().toEpochMilli())
        .execute();
    return new Made(secret, link);
  }

  /** The link of a secret, unless it is revoked; one that is over is found too. */
  public Optional<Link> find(String secret) {
    return rows.one(
        "digest = :digest AND revoked_at IS NULL", Map.of("digest", Secrets.digest(secret)));
  }

  /** The links to a season, but for those revoked, in the order they were made. */
  public List<Link> of(Cycle cycle) {
    return rows.all("cycle = :cycle AND revoked_at IS NULL", Map.of("cycle", cycle.key()));
  }

  /** Notes that a link was opened. */
  public void used(Link link, Instant now) {
    handle
        .createUpdate("UPDATE season_link SET used_at = :now WHERE id = :key")
        .bind("now", now.toEpochMilli())
        .bind("key", link.key())
        .execute();
  }

  /** Revokes a link, for good. */
  public void revoke(Link link, Instant now) {
    handle
        .createUpdate(
            "UPDATE season_link SET revoked_at = :now WHERE id = :key AND revoked_at IS NULL")
        .bind("now", now.toEpochMilli())
        .bind("key", link.key())
        .execute();
  }
}
