package io.github.tiderule.api.record.table;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/** Columns as values. */
public final class Rows {

  private Rows() {}

  /** A column of milliseconds that is never empty. */
  public static Instant instant(ResultSet row, String column) throws SQLException {
    return Instant.ofEpochMilli(row.getLong(column));
  }

  /** A column of milliseconds that may be empty. */
  public static @Nullable Instant maybeInstant(ResultSet row, String column) throws SQLException {
    long millis = row.getLong(column);
    return row.wasNull() ? null : Instant.ofEpochMilli(millis);
  }

  /** A column of whole numbers that may be empty. */
  public static @Nullable Integer maybeWhole(ResultSet row, String column) throws SQLException {
    int value = row.getInt(column);
    return row.wasNull() ? null : value;
  }
}
