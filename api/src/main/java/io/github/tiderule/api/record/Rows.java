package io.github.tiderule.api.record;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/** Columns as values. */
final class Rows {

  private Rows() {}

  static Instant instant(ResultSet row, String column) throws SQLException {
    return Instant.ofEpochMilli(row.getLong(column));
  }

  static @Nullable Instant maybeInstant(ResultSet row, String column) throws SQLException {
    long millis = row.getLong(column);
    return row.wasNull() ? null : Instant.ofEpochMilli(millis);
  }

  static @Nullable Integer maybeWhole(ResultSet row, String column) throws SQLException {
    int value = row.getInt(column);
    return row.wasNull() ? null : value;
  }
}
