package io.github.tiderule.api.record;

import io.github.tiderule.api.record.table.KeyedRows;
import io.github.tiderule.api.record.table.Page;
import io.github.tiderule.api.record.table.Rows;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import org.jdbi.v3.core.Handle;

/** What females and cycles were said to be, each time somebody said it. They are only added. */
public final class Revisions {

  private final Handle handle;
  private final KeyedRows<Revision> rows;

  Revisions(Handle handle) {
    this.handle = handle;
    this.rows =
        KeyedRows.numbered(handle, "revision", "version", Revisions::revision, Revision::version);
  }

  private static Revision revision(ResultSet row) throws SQLException {
    return new Revision(
        row.getInt("version"),
        row.getString("document"),
        row.getString("person"),
        Rows.instant(row, "at"));
  }

  /**
   * What was said of one female or season, first to last.
   *
   * @param subject her key, or its
   */
  public Page<Revision> of(String subject, Page.Wanted wanted) {
    return rows.page("subject = :subject", Map.of("subject", subject), wanted);
  }

  /** What was said last; absent where nothing was. */
  Optional<Revision> latest(String subject) {
    return rows.one(
        "subject = :subject AND version ="
            + " (SELECT MAX(version) FROM revision WHERE subject = :subject)",
        Map.of("subject", subject));
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
