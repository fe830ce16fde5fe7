package io.github.tiderule.api.record.store;

import java.sql.SQLException;
import java.util.Set;

/**
 * The record cannot be reached or written at present: its database server is gone, its disk is
 * full, its file is damaged, or another process holds it for too long. What was to be changed is
 * not acknowledged; if the server went away in the very moment, it may have been kept all the same.
 */
public final class Unavailable extends RuntimeException {

  private static final long serialVersionUID = 1L;

  /** First two characters of an SQLSTATE: no connection, no means, stopped by its operator. */
  private static final Set<String> CLASSES = Set.of("08", "53", "57");

  /**
   * Primary result codes of SQLite: busy, locked, read-only, failing, damaged, full, not to be
   * opened and no database.
   */
  private static final Set<Integer> CODES = Set.of(5, 6, 8, 10, 11, 13, 14, 26);

  Unavailable(String words) {
    super(words);
  }

  private Unavailable(SQLException cause) {
    super(cause.getMessage(), cause);
  }

  /** What is to be thrown instead of a failure: this, if that is what it means. */
  static RuntimeException instead(RuntimeException failure, boolean embedded) {
    for (Throwable cause = failure; cause != null; cause = cause.getCause()) {
      if (cause instanceof SQLException sql && (embedded ? isOfFile(sql) : isOfServer(sql))) {
        return new Unavailable(sql);
      }
    }
    return failure;
  }

  private static boolean isOfServer(SQLException failure) {
    String state = failure.getSQLState();
    return isWaitedFor(failure) || (state != null && CLASSES.stream().anyMatch(state::startsWith));
  }

  private static boolean isOfFile(SQLException failure) {
    return isWaitedFor(failure) || CODES.contains(failure.getErrorCode());
  }

  /** No connection came in time. */
  private static boolean isWaitedFor(SQLException failure) {
    return failure instanceof java.sql.SQLTransientConnectionException;
  }
}
