package io.github.tiderule.api.record;

import io.github.tiderule.api.record.table.Conflict;
import io.github.tiderule.api.record.table.KeyedRows;
import io.github.tiderule.api.record.table.Keys;
import io.github.tiderule.api.record.table.Page;
import io.github.tiderule.api.record.table.Rows;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import org.jdbi.v3.core.Handle;

/** The females of a record. */
public final class Females {

  private final Handle handle;
  private final KeyedRows<Female> rows;

  Females(Handle handle) {
    this.handle = handle;
    this.rows = KeyedRows.of(handle, "female", Females::female, Female::key);
  }

  private static Female female(ResultSet row) throws SQLException {
    return new Female(
        row.getString("id"),
        row.getString("owner"),
        row.getString("handle"),
        row.getString("document"),
        row.getInt("version"),
        row.getInt("shared") != 0,
        Rows.instant(row, "created_at"),
        Rows.instant(row, "changed_at"));
  }

  /** One female. */
  public Optional<Female> find(String key) {
    return rows.find(key);
  }

  /** The female an owner calls so. */
  public Optional<Female> named(String owner, String name) {
    return rows.one("owner = :owner AND handle = :name", Map.of("owner", owner, "name", name));
  }

  /**
   * The females a person may see, in the order they were added.
   *
   * @param withShared whether those shared with the clinic are among them
   */
  public Page<Female> seenBy(String person, boolean withShared, Page.Wanted wanted) {
    return rows.page(
        "owner = :person OR (shared = 1 AND :withShared = 1)",
        Map.of("person", person, "withShared", withShared ? 1 : 0),
        wanted);
  }

  /** Every female, in the order they were added. */
  public Page<Female> all(Page.Wanted wanted) {
    return rows.page("1 = 1", Map.of(), wanted);
  }

  /**
   * Adds a female.
   *
   * @throws Conflict if her owner calls another one so
   */
  public Female add(String owner, String name, String document, Instant now) {
    if (named(owner, name).isPresent()) {
      throw new Conflict(Conflict.Kind.TAKEN, "there is a female with the id \"" + name + "\"");
    }
    Female female = new Female(Keys.next(now), owner, name, document, 1, false, now, now);
    handle
        .createUpdate(
            "INSERT INTO female"
                + " (id, owner, handle, document, version, shared, created_at, changed_at)"
                + " VALUES (:key, :owner, :name, :document, 1, 0, :now, :now)")
        .bind("key", female.key())
        .bind("owner", owner)
        .bind("name", name)
        .bind("document", document)
        .bind("now", now.toEpochMilli())
        .execute();
    new Revisions(handle).add(female.key(), 1, document, owner, now);
    return female;
  }

  /**
   * Changes what is known of a female. The former text stays among the revisions.
   *
   * @param was the female as she was when the change was thought of
   * @throws Conflict if she was changed since, or her owner calls another one so
   */
  public Female change(Female was, String name, String document, String person, Instant now) {
    if (!name.equals(was.handle()) && named(was.owner(), name).isPresent()) {
      throw new Conflict(Conflict.Kind.TAKEN, "there is a female with the id \"" + name + "\"");
    }
    return write(was, name, document, was.shared(), person, now);
  }

  /**
   * Shares a female with the clinic, or ends that.
   *
   * @param was the female as she was when the change was thought of
   * @throws Conflict if she was changed since
   */
  public Female share(Female was, boolean shared, String person, Instant now) {
    return write(was, was.handle(), was.document(), shared, person, now);
  }

  private Female write(
      Female was, String name, String document, boolean shared, String person, Instant now) {
    int version = was.version() + 1;
    int changed =
        handle
            .createUpdate(
                "UPDATE female SET handle = :name, document = :document, shared = :shared,"
                    + " version = :version, changed_at = :now WHERE id = :key AND version = :was")
            .bind("name", name)
            .bind("document", document)
            .bind("shared", shared ? 1 : 0)
            .bind("version", version)
            .bind("now", now.toEpochMilli())
            .bind("key", was.key())
            .bind("was", was.version())
            .execute();
    if (changed != 1) {
      throw new Conflict(Conflict.Kind.CHANGED, "the female was changed meanwhile");
    }
    new Revisions(handle).add(was.key(), version, document, person, now);
    return new Female(
        was.key(), was.owner(), name, document, version, shared, was.createdAt(), now);
  }

  /** Hands every female of one person to another; for a record that gets its first user. */
  public int handOver(String from, String to) {
    return handle
        .createUpdate("UPDATE female SET owner = :to, version = version + 1 WHERE owner = :from")
        .bind("from", from)
        .bind("to", to)
        .execute();
  }
}
