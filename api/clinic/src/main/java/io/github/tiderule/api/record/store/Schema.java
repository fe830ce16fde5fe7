package io.github.tiderule.api.record.store;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Optional;

/**
 * How far the tables of a record have been brought, as its migrations noted it. Looked up by
 * itself, since having it looked up takes a third of the time of a start.
 *
 * @param newest version of the newest migration that was made
 * @param whole whether all that were begun were made
 */
record Schema(int newest, boolean whole) {

  /** Version of the newest migration this program knows. */
  static final int KNOWN = 4;

  /** That of a database; empty where there are no tables of a record. */
  static Optional<Schema> of(Connection connection) {
    try (Statement statement = connection.createStatement();
        ResultSet row =
            statement.executeQuery(
                "SELECT version, success FROM flyway_schema_history WHERE version IS NOT NULL")) {
      int newest = 0;
      boolean whole = true;
      while (row.next()) {
        newest = Math.max(newest, Integer.parseInt(row.getString("version")));
        whole &= row.getBoolean("success");
      }
      return newest == 0 ? Optional.empty() : Optional.of(new Schema(newest, whole));
    } catch (SQLException | NumberFormatException e) {
      return Optional.empty();
    }
  }

  /** Whether nothing is to be brought up. */
  boolean isCurrent() {
    return whole && newest == KNOWN;
  }

  /**
   * Refuses what a newer program wrote, which this one would read as if nothing had been added.
   *
   * @throws UnfitRecord if it is newer
   */
  void mustBeKnown() {
    if (newest > KNOWN) {
      throw new UnfitRecord(
          "was written by a newer program (its tables have version "
              + newest
              + ", this program knows "
              + KNOWN
              + "); use that program, or a newer one");
    }
  }
}
