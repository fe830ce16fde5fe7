package io.github.tiderule.api.access;

import io.github.tiderule.api.record.Female;
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
 * Addresses that calendar programs subscribe to: whoever has one reads the dates behind it, and
 * nothing else. The record holds digests of their secrets only.
 */
public final class CalendarAddresses {

  /** A program asks many times a day; its last use is noted no more often than that. */
  private static final Duration NOTED = Duration.ofHours(1);

  /**
   * An address.
   *
   * @param female whose dates it has; absent for all females of the person's own
   * @param usedAt when it was asked last, to the hour; absent when it never was
   */
  public record Address(
      String key,
      String person,
      @Nullable String female,
      Instant createdAt,
      @Nullable Instant usedAt) {}

  /**
   * An address just made.
   *
   * @param secret the part of it that nobody can guess; it cannot be had again
   */
  public record Made(String secret, Address address) {}

  private final Handle handle;
  private final KeyedRows<Address> rows;

  private CalendarAddresses(Handle handle) {
    this.handle = handle;
    this.rows = KeyedRows.of(handle, "calendar_address", CalendarAddresses::address, Address::key);
  }

  /** The addresses of a record. */
  public static CalendarAddresses of(Ledger ledger) {
    return new CalendarAddresses(ledger.handle());
  }

  private static Address address(ResultSet row) throws SQLException {
    return new Address(
        row.getString("id"),
        row.getString("person"),
        row.getString("female"),
        Rows.instant(row, "created_at"),
        Rows.maybeInstant(row, "used_at"));
  }

  /**
   * Makes an address.
   *
   * @param female whose dates it has; absent for all females of the person's own
   */
  public Made make(Person person, @Nullable Female female, Instant now) {
    String secret = Secrets.next();
    Address address =
        new Address(Keys.next(now), person.key(), female == null ? null : female.key(), now, null);
    handle
        .createUpdate(
            "INSERT INTO calendar_address (id, person, digest, female, created_at)"
                + " VALUES (:key, :person, :digest, :female, :now)")
        .bind("key", address.key())
        .bind("person", address.person())
        .bind("digest", Secrets.digest(secret))
        .bind("female", address.female())
        .bind("now", now.toEpochMilli())
        .execute();
    return new Made(secret, address);
  }

  /** The address of a secret, unless it is revoked. */
  public Optional<Address> find(String secret) {
    return rows.one(
        "digest = :digest AND revoked_at IS NULL", Map.of("digest", Secrets.digest(secret)));
  }

  /** One address of a person, unless it is revoked. */
  public Optional<Address> find(Person person, String key) {
    return rows.one(
        "id = :key AND person = :person AND revoked_at IS NULL",
        Map.of("key", key, "person", person.key()));
  }

  /** The addresses of a person that work, in the order they were made. */
  public List<Address> of(Person person) {
    return rows.all("person = :person AND revoked_at IS NULL", Map.of("person", person.key()));
  }

  /** Whether the last use of an address is to be noted anew. */
  public static boolean isToBeNoted(Address address, Instant now) {
    return address.usedAt() == null || address.usedAt().plus(NOTED).isBefore(now);
  }

  /** Notes that an address was asked. */
  public void used(Address address, Instant now) {
    handle
        .createUpdate("UPDATE calendar_address SET used_at = :now WHERE id = :key")
        .bind("now", now.toEpochMilli())
        .bind("key", address.key())
        .execute();
  }

  /** Revokes an address, for good. */
  public void revoke(Address address, Instant now) {
    handle
        .createUpdate(
            "UPDATE calendar_address SET revoked_at = :now"
                + " WHERE id = :key AND revoked_at IS NULL")
        .bind("now", now.toEpochMilli())
        .bind("key", address.key())
        .execute();
  }
}
