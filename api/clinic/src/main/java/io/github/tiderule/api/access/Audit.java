package io.github.tiderule.api.access;

import io.github.tiderule.api.record.Ledger;
import io.github.tiderule.api.record.table.KeyedRows;
import io.github.tiderule.api.record.table.Keys;
import io.github.tiderule.api.record.table.Page;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Map;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;

/** Who did what and when. Lines are only added. */
public final class Audit {

  /** The deed of signing in. */
  public static final String SIGNED_IN = "signed-in";

  /**
   * One deed.
   *
   * @param person key of who did it; absent when nobody is known to have
   * @param deed what was done, in a word
   * @param about key of what it was done to
   * @param female key of the female it concerns
   * @param address network address it came from
   */
  public record Line(
      String key,
      Instant at,
      @Nullable String person,
      String deed,
      @Nullable String about,
      @Nullable String female,
      @Nullable String address) {}

  private final Handle handle;
  private final KeyedRows<Line> rows;

  private Audit(Handle handle) {
    this.handle = handle;
    this.rows = KeyedRows.of(handle, "audit", Audit::line, Line::key);
  }

  /** The audit log of a record. */
  public static Audit of(Ledger ledger) {
    return new Audit(ledger.handle());
  }

  /** Adds a line. */
  public void note(
      @Nullable Person person,
      String deed,
      @Nullable String about,
      @Nullable String female,
      @Nullable String address,
      Instant now) {
    handle
        .createUpdate(
            "INSERT INTO audit (id, at, person, deed, about, female, address)"
                + " VALUES (:key, :at, :person, :deed, :about, :female, :address)")
        .bind("key", Keys.next(now))
        .bind("at", now.toEpochMilli())
        .bind("person", person == null ? null : person.key())
        .bind("deed", deed)
        .bind("about", about)
        .bind("female", female)
        .bind("address", address)
        .execute();
  }

  /** Whether a person signed in from an address before. */
  public boolean signedInFrom(Person person, String address) {
    return handle
        .createQuery(
            "SELECT id FROM audit WHERE person = :person AND deed = :deed AND address = :address"
                + " LIMIT 1")
        .bind("person", person.key())
        .bind("deed", SIGNED_IN)
        .bind("address", address)
        .mapTo(String.class)
        .findFirst()
        .isPresent();
  }

  /** What a person did, and what others did to her females, in the order it was done. */
  public Page<Line> concerning(Person person, Page.Wanted wanted) {
    return rows.page(
        "person = :person OR female IN (SELECT id FROM female WHERE owner = :person)",
        Map.of("person", person.key()),
        wanted);
  }

  private static Line line(ResultSet row) throws SQLException {
    return new Line(
        row.getString("id"),
        Instant.ofEpochMilli(row.getLong("at")),
        row.getString("person"),
        row.getString("deed"),
        row.getString("about"),
        row.getString("female"),
        row.getString("address"));
  }
}
