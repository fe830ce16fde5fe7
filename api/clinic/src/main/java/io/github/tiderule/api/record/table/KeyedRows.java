package io.github.tiderule.api.record.table;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToIntFunction;
import org.jdbi.v3.core.Handle;

/**
 * Reads the rows of one table, in the order of one column that tells them apart.
 *
 * @param <T> what a row is read as
 */
public final class KeyedRows<T> {

  /** Reads the row a result stands at. */
  public interface Row<T> {
    T read(ResultSet row) throws SQLException;
  }

  private final Handle handle;
  private final String table;
  private final String column;
  private final Row<T> row;
  private final Function<T, String> place;
  private final Function<String, Object> after;

  private KeyedRows(
      Handle handle,
      String table,
      String column,
      Row<T> row,
      Function<T, String> place,
      Function<String, Object> after) {
    this.handle = handle;
    this.table = table;
    this.column = column;
    this.row = row;
    this.place = place;
    this.after = after;
  }

  /** Rows with a key, in the order they were made. */
  public static <T> KeyedRows<T> of(
      Handle handle, String table, Row<T> row, Function<T, String> key) {
    return new KeyedRows<>(handle, table, "id", row, key, one -> one);
  }

  /** Rows with a number. */
  public static <T> KeyedRows<T> numbered(
      Handle handle, String table, String column, Row<T> row, ToIntFunction<T> number) {
    return new KeyedRows<>(
        handle,
        table,
        column,
        row,
        one -> Integer.toString(number.applyAsInt(one)),
        KeyedRows::number);
  }

  private static int number(String after) {
    try {
      return after.isEmpty() ? 0 : Integer.parseInt(after);
    } catch (NumberFormatException e) {
      return Integer.MAX_VALUE;
    }
  }

  /** The row with a key. */
  public Optional<T> find(String key) {
    return one(column + " = :key", Map.of("key", key));
  }

  /**
   * The one row that meets a condition.
   *
   * @param condition in SQL
   * @param values what the names in it stand for
   */
  public Optional<T> one(String condition, Map<String, ?> values) {
    return handle
        .createQuery("SELECT * FROM " + table + " WHERE " + condition)
        .bindMap(values)
        .map((result, context) -> row.read(result))
        .findOne();
  }

  /** Every row that meets a condition. */
  public List<T> all(String condition, Map<String, ?> values) {
    return handle
        .createQuery("SELECT * FROM " + table + " WHERE " + condition + " ORDER BY " + column)
        .bindMap(values)
        .map((result, context) -> row.read(result))
        .list();
  }

  /** Some of the rows that meet a condition. */
  public Page<T> page(String condition, Map<String, ?> values, Page.Wanted wanted) {
    List<T> read =
        handle
            .createQuery(
                "SELECT * FROM "
                    + table
                    + " WHERE ("
                    + condition
                    + ") AND "
                    + column
                    + " > :after ORDER BY "
                    + column
                    + " LIMIT :most")
            .bindMap(values)
            .bind("after", after.apply(wanted.after()))
            .bind("most", wanted.toRead())
            .map((result, context) -> row.read(result))
            .list();
    return wanted.of(read, place);
  }
}
