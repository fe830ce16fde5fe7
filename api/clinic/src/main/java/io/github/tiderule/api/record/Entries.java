package io.github.tiderule.api.record;

import io.github.tiderule.api.record.table.Conflict;
import io.github.tiderule.api.record.table.KeyedRows;
import io.github.tiderule.api.record.table.Page;
import io.github.tiderule.api.record.table.Rows;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;

/** The entries about the observations of a record. They are only added. */
public final class Entries {

  private static final String LATEST =
      " NOT EXISTS (SELECT 1 FROM entry later"
          + " WHERE later.cycle = entry.cycle AND later.replaces = entry.number)";

  private final Handle handle;
  private final KeyedRows<Entry> rows;

  Entries(Handle handle) {
    this.handle = handle;
    this.rows = KeyedRows.numbered(handle, "entry", "number", Entries::entry, Entry::number);
  }

  private static Entry entry(ResultSet row) throws SQLException {
    return new Entry(
        row.getString("cycle"),
        row.getInt("number"),
        row.getString("observation"),
        Change.valueOf(row.getString("change")),
        Rows.maybeWhole(row, "replaces"),
        row.getString("document"),
        row.getString("reason"),
        row.getString("person"),
        Rows.instant(row, "at"));
  }

  /** The observations as they are now, in the order of their entries. */
  public List<Entry> current(String cycle) {
    return rows.all("cycle = :cycle AND document IS NOT NULL AND" + LATEST, Map.of("cycle", cycle));
  }

  /** The last entry about each observation, also of those taken back. */
  public Page<Entry> latest(String cycle, Page.Wanted wanted) {
    return rows.page("cycle = :cycle AND" + LATEST, Map.of("cycle", cycle), wanted);
  }

  /** Every entry, in the order they were made. */
  public Page<Entry> all(String cycle, Page.Wanted wanted) {
    return rows.page("cycle = :cycle", Map.of("cycle", cycle), wanted);
  }

  /** Every entry about one observation, in the order they were made. */
  public List<Entry> history(String cycle, String observation) {
    return rows.all(
        "cycle = :cycle AND observation = :observation",
        Map.of("cycle", cycle, "observation", observation));
  }

  /** The ids of all observations there are or were. */
  public Set<String> ids(String cycle) {
    return handle
        .createQuery("SELECT DISTINCT observation FROM entry WHERE cycle = :cycle")
        .bind("cycle", cycle)
        .mapTo(String.class)
        .set();
  }

  /** The last entry about one observation, also where it was taken back. */
  public Optional<Entry> last(String cycle, String observation) {
    List<Entry> history = history(cycle, observation);
    return history.isEmpty() ? Optional.empty() : Optional.of(history.get(history.size() - 1));
  }

  /**
   * Adds an observation.
   *
   * @param seenAt the moment for which the season with it was found to be a good cycle file
   * @throws Conflict if there is or was one of that id
   */
  public Entry add(
      String cycle,
      String observation,
      String document,
      String person,
      Instant seenAt,
      Instant now) {
    int number = nextNumber(cycle, seenAt, now);
    if (last(cycle, observation).isPresent()) {
      throw new Conflict(
          Conflict.Kind.TAKEN, "there is an observation with the id \"" + observation + "\"");
    }
    return write(
        new Entry(cycle, number, observation, Change.ADDED, null, document, null, person, now));
  }

  /**
   * Enters that an observation reads otherwise, or was never so.
   *
   * @param was its last entry when the change was thought of
   * @param document what it reads now; absent when it was never so
   * @throws Conflict if another entry about it was made since, or it is taken back already
   */
  public Entry replace(
      Entry was,
      @Nullable String document,
      String reason,
      String person,
      Instant seenAt,
      Instant now) {
    if (was.change() == Change.RETRACTED) {
      throw new Conflict(Conflict.Kind.RETRACTED, "the observation was taken back");
    }
    return after(was, document, reason, person, seenAt, now);
  }

  /**
   * Enters that an observation that was taken back counts after all.
   *
   * @param was its last entry when the change was thought of
   * @param document what it reads now
   * @throws Conflict if another entry about it was made since, or it is not taken back
   */
  public Entry restore(
      Entry was, String document, String reason, String person, Instant seenAt, Instant now) {
    if (was.change() != Change.RETRACTED) {
      throw new Conflict(Conflict.Kind.TAKEN, "the observation is not taken back");
    }
    return after(was, document, reason, person, seenAt, now);
  }

  private Entry after(
      Entry was,
      @Nullable String document,
      String reason,
      String person,
      Instant seenAt,
      Instant now) {
    int number = nextNumber(was.cycle(), seenAt, now);
    Entry last = last(was.cycle(), was.observation()).orElse(was);
    if (last.number() != was.number()) {
      throw new Conflict(
          last.change() == Change.RETRACTED ? Conflict.Kind.RETRACTED : Conflict.Kind.CHANGED,
          last.change() == Change.RETRACTED
              ? "the observation was taken back"
              : "the observation was changed meanwhile");
    }
    return write(
        new Entry(
            was.cycle(),
            number,
            was.observation(),
            document == null ? Change.RETRACTED : Change.CORRECTED,
            was.number(),
            document,
            reason,
            person,
            now));
  }

  /** Counts the entry first, which makes whoever enters into the same season wait. */
  private int nextNumber(String cycle, Instant seenAt, Instant now) {
    handle
        .createUpdate(
            "UPDATE cycle SET entries = entries + 1, seen_at = :seenAt, changed_at = :now"
                + " WHERE id = :cycle")
        .bind("seenAt", seenAt.toEpochMilli())
        .bind("now", now.toEpochMilli())
        .bind("cycle", cycle)
        .execute();
    return handle
        .createQuery("SELECT entries FROM cycle WHERE id = :cycle")
        .bind("cycle", cycle)
        .mapTo(Integer.class)
        .one();
  }

  private Entry write(Entry entry) {
    handle
        .createUpdate(
            "INSERT INTO entry (cycle, number, observation, change, replaces, document, reason,"
                + " person, at) VALUES (:cycle, :number, :observation, :change, :replaces,"
                + " :document, :reason, :person, :at)")
        .bind("cycle", entry.cycle())
        .bind("number", entry.number())
        .bind("observation", entry.observation())
        .bind("change", entry.change().name())
        .bind("replaces", entry.replaces())
        .bind("document", entry.document())
        .bind("reason", entry.reason())
        .bind("person", entry.person())
        .bind("at", entry.at().toEpochMilli())
        .execute();
    return entry;
  }
}
