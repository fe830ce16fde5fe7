package io.github.tiderule.api.record.store;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.locks.ReentrantLock;
import org.jspecify.annotations.Nullable;

/**
 * Whether the file of an embedded record is whole. Looking reads all of it, so what was seen stands
 * for a while. Thread-safe.
 */
final class Soundness {

  /** Result codes of SQLite: the file is damaged, or none of a database. */
  private static final Set<Integer> DAMAGED = Set.of(11, 26);

  /** What is seen stands so many times as long as looking took, at least. */
  private static final int REST = 100;

  private final String jdbc;
  private final ReentrantLock looking = new ReentrantLock();
  private volatile @Nullable Seen seen;

  /**
   * What was seen.
   *
   * @param damage absent where the file is whole
   * @param at nanoseconds of the process
   */
  private record Seen(@Nullable String damage, long at, long took) {}

  Soundness(String jdbc) {
    this.jdbc = jdbc;
  }

  /**
   * What is damaged; empty where nothing is.
   *
   * @param age how long ago it may have been seen, roughly; zero has it looked for now
   */
  Optional<String> damage(Duration age) {
    Seen last = seen;
    if (last == null) {
      looking.lock();
    } else if (!isOld(last, age) || !looking.tryLock()) {
      // whoever comes while another looks takes what was seen before
      return Optional.ofNullable(last.damage());
    }
    try {
      Seen meanwhile = seen;
      Seen now = meanwhile == null || meanwhile.equals(last) ? look() : meanwhile;
      seen = now;
      return Optional.ofNullable(now.damage());
    } finally {
      looking.unlock();
    }
  }

  private static boolean isOld(Seen last, Duration age) {
    long stands = Math.max(age.toNanos(), REST * last.took());
    return age.isZero() || System.nanoTime() - last.at() >= stands;
  }

  private Seen look() {
    long from = System.nanoTime();
    String damage;
    // a connection of its own: one in use has pages in memory that the disk no longer has
    try (Connection connection = DriverManager.getConnection(jdbc)) {
      damage = damage(connection, "quick_check").orElse(null);
    } catch (SQLException e) {
      // one that cannot be reached shows that by itself
      damage = DAMAGED.contains(e.getErrorCode()) ? e.getMessage() : null;
    }
    long now = System.nanoTime();
    return new Seen(damage, now, now - from);
  }

  /** What a check of the database itself says is wrong; empty for nothing. */
  static Optional<String> damage(Connection connection, String check) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery("PRAGMA " + check + "(1)")) {
      String words = row.next() ? row.getString(1) : "no answer";
      return words.equals("ok") ? Optional.empty() : Optional.of(words);
    } catch (SQLException e) {
      if (DAMAGED.contains(e.getErrorCode())) {
        return Optional.of(String.valueOf(e.getMessage()));
      }
      throw e;
    }
  }
}
