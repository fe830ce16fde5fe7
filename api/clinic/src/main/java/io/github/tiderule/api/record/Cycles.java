package io.github.tiderule.api.record;

import io.github.tiderule.api.record.table.Conflict;
import io.github.tiderule.api.record.table.KeyedRows;
import io.github.tiderule.api.record.table.Keys;
import io.github.tiderule.api.record.table.Page;
import io.github.tiderule.api.record.table.Rows;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;

/** The seasons of a record. */
public final class Cycles {

  private static final int MOST = 1000;

  private final Handle handle;
  private final KeyedRows<Cycle> rows;

  Cycles(Handle handle) {
    this.handle = handle;
    this.rows = KeyedRows.of(handle, "cycle", Cycles::cycle, Cycle::key);
  }

  private static Cycle cycle(ResultSet row) throws SQLException {
    return new Cycle(
        row.getString("id"),
        row.getString("female"),
        row.getString("document"),
        Rows.maybeInstant(row, "as_of"),
        Rows.instant(row, "seen_at"),
        row.getInt("version"),
        row.getInt("entries"),
        Rows.instant(row, "created_at"),
        Rows.instant(row, "changed_at"));
  }

  /** One season. */
  public Optional<Cycle> find(String key) {
    return rows.find(key);
  }

  /** The seasons of a female, in the order they were added. */
  public Page<Cycle> of(String female, Page.Wanted wanted) {
    return rows.page("female = :female", Map.of("female", female), wanted);
  }

  /** The seasons of a female, in the order they were added; the first thousand, if need be. */
  public List<Cycle> all(String female) {
    return of(female, new Page.Wanted("", MOST)).items();
  }

  /** Adds a season that was found to be a good cycle file now, or at the moment given. */
  public Cycle add(
      String female, String document, @Nullable Instant asOf, String person, Instant now) {
    return add(female, document, asOf, asOf == null ? now : asOf, person, now);
  }

  /**
   * Adds a season that was found to be a good cycle file at another moment, as one that is taken
   * in.
   *
   * @param seenAt the moment of that
   */
  public Cycle add(
      String female,
      String document,
      @Nullable Instant asOf,
      Instant seenAt,
      String person,
      Instant now) {
    Cycle cycle = new Cycle(Keys.next(now), female, document, asOf, seenAt, 1, 0, now, now);
    handle
        .createUpdate(
            "INSERT INTO cycle (id, female, document, as_of, seen_at, version, entries,"
                + " created_at, changed_at)"
                + " VALUES (:key, :female, :document, :asOf, :seenAt, 1, 0, :now, :now)")
        .bind("key", cycle.key())
        .bind("female", female)
        .bind("document", document)
        .bind("asOf", asOf == null ? null : asOf.toEpochMilli())
        .bind("seenAt", seenAt.toEpochMilli())
        .bind("now", now.toEpochMilli())
        .execute();
    new Revisions(handle).add(cycle.key(), 1, document, person, now);
    return cycle;
  }

  /**
   * Changes what is known of a season beside its observations. The former text stays among the
   * revisions.
   *
   * @param was the season as it was when the change was thought of
   * @throws Conflict if it was changed since
   */
  public Cycle change(
      Cycle was, String document, @Nullable Instant asOf, String person, Instant now) {
    int version = was.version() + 1;
    Instant seenAt = asOf == null ? now : asOf;
    int changed =
        handle
            .createUpdate(
                "UPDATE cycle SET document = :document, as_of = :asOf, seen_at = :seenAt,"
                    + " version = :version, changed_at = :now WHERE id = :key AND version = :was")
            .bind("document", document)
            .bind("asOf", asOf == null ? null : asOf.toEpochMilli())
            .bind("seenAt", seenAt.toEpochMilli())
            .bind("version", version)
            .bind("now", now.toEpochMilli())
            .bind("key", was.key())
            .bind("was", was.version())
            .execute();
    if (changed != 1) {
      throw new Conflict(Conflict.Kind.CHANGED, "the cycle was changed meanwhile");
    }
    new Revisions(handle).add(was.key(), version, document, person, now);
    return new Cycle(
        was.key(),
        was.female(),
        document,
        asOf,
        seenAt,
        version,
        was.entries(),
        was.createdAt(),
        now);
  }
}
