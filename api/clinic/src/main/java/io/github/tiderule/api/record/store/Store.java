package io.github.tiderule.api.record.store;

import com.zaxxer.hikari.HikariConfig;
import com.zaxxer.hikari.HikariDataSource;
import io.github.tiderule.api.record.Ledger;
import io.github.tiderule.api.record.table.Conflict;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Function;
import javax.sql.DataSource;
import org.flywaydb.core.Flyway;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.JdbiException;
import org.jdbi.v3.core.transaction.TransactionIsolationLevel;
import org.jspecify.annotations.Nullable;

/**
 * An open record. Safe for use by many threads.
 *
 * <p>Embedded, it is one SQLite file with a write-ahead log, flushed to the disk at every change; a
 * change that has returned outlives the process and the machine. There is one writer at a time.
 */
public final class Store implements AutoCloseable {

  private static final String MIGRATIONS = "classpath:io/github/tiderule/api/record/migration";

  private static final int CONNECTIONS = 8;
  private static final String THERE_ALREADY = "23505";
  private static final long MOST_WAIT_MILLIS = 10_000;

  private final HikariDataSource source;
  private final Jdbi jdbi;
  private final @Nullable ReentrantLock oneWriter;
  private final Soundness soundness;

  private Store(HikariDataSource source, Address address, Soundness soundness) {
    this.source = source;
    this.jdbi = Jdbi.create(source);
    this.oneWriter = address.file() == null ? null : new ReentrantLock(true);
    this.soundness = soundness;
  }

  /**
   * Opens a record, and makes or brings up its tables.
   *
   * @throws UncheckedIOException if its directory or file cannot be made
   * @throws UnfitRecord if it is damaged, or was written by a newer program
   * @throws RuntimeException if it cannot be opened
   */
  public static Store open(Address address) {
    Path file = address.file();
    if (file != null) {
      OwnersFiles.make(file);
    }
    Soundness soundness = new Soundness(address.jdbc());
    if (file != null) {
      soundness.damage(Duration.ZERO).ifPresent(Store::refuse);
    }
    HikariConfig config = new HikariConfig();
    config.setJdbcUrl(address.jdbc());
    config.setMaximumPoolSize(CONNECTIONS);
    config.setMinimumIdle(1);
    config.setConnectionTimeout(MOST_WAIT_MILLIS);
    config.setPoolName("tiderule-record");
    if (file != null) {
      config.addDataSourceProperty("journal_mode", "WAL");
      config.addDataSourceProperty("synchronous", "FULL");
      config.addDataSourceProperty("foreign_keys", "true");
      config.addDataSourceProperty("busy_timeout", Long.toString(MOST_WAIT_MILLIS));
      // a change takes the write lock at its start, so that it never fails half way for want of it
      config.addDataSourceProperty("transaction_mode", "IMMEDIATE");
    }
    HikariDataSource source = new HikariDataSource(config);
    try {
      bringUp(source);
      return new Store(source, address, soundness);
    } catch (RuntimeException e) {
      source.close();
      throw e;
    }
  }

  private static void refuse(String damage) {
    throw new UnfitRecord("is damaged (" + damage + "); restore a backup into a new one");
  }

  private static void bringUp(DataSource source) {
    Optional<Schema> schema;
    try (Connection connection = source.getConnection()) {
      schema = Schema.of(connection);
    } catch (SQLException e) {
      throw new IllegalStateException(e);
    }
    schema.ifPresent(Schema::mustBeKnown);
    if (schema.filter(Schema::isCurrent).isEmpty()) {
      Flyway.configure(Store.class.getClassLoader())
          .dataSource(source)
          .locations(MIGRATIONS)
          .failOnMissingLocations(true)
          .load()
          .migrate();
    }
  }

  /**
   * Refuses to be used where its file is damaged. The file is looked through, but not more often
   * than once in {@code age}, unless that is zero. A database server looks after its own.
   *
   * @throws Unavailable if it is damaged
   */
  public void mustBeSound(Duration age) {
    if (isEmbedded()) {
      soundness
          .damage(age)
          .ifPresent(
              damage -> {
                throw new Unavailable("it is damaged: " + damage);
              });
    }
  }

  /**
   * Reads from the record. What is read in one call may straddle another's change.
   *
   * @throws Unavailable if it cannot be reached
   */
  public <T extends @Nullable Object> T read(Function<Ledger, T> work) {
    try {
      return jdbi.withHandle(handle -> work.apply(new Ledger(handle)));
    } catch (JdbiException e) {
      throw Unavailable.instead(e, isEmbedded());
    }
  }

  /**
   * Reads from the record as it is at one moment, whatever is changed meanwhile.
   *
   * @throws Unavailable if it cannot be reached
   */
  public <T extends @Nullable Object> T readAtOneMoment(Function<Ledger, T> work) {
    if (isEmbedded()) {
      return change(work);
    }
    try {
      return jdbi.inTransaction(
          TransactionIsolationLevel.REPEATABLE_READ, handle -> work.apply(new Ledger(handle)));
    } catch (JdbiException e) {
      throw Unavailable.instead(e, false);
    }
  }

  /** Whether it is one file here, and not on a database server. */
  public boolean isEmbedded() {
    return oneWriter != null;
  }

  /**
   * Changes the record: all of it, or nothing if the work throws. When it returns, the change is on
   * the disk.
   *
   * @throws Unavailable if it cannot be reached or written
   */
  public <T extends @Nullable Object> T change(Function<Ledger, T> work) {
    ReentrantLock lock = oneWriter;
    if (lock == null) {
      return changeOnServer(work);
    }
    lock.lock();
    try {
      return jdbi.inTransaction(handle -> work.apply(new Ledger(handle)));
    } catch (JdbiException e) {
      throw Unavailable.instead(e, true);
    } finally {
      lock.unlock();
    }
  }

  /** Where there is no one writer, two can pass the same check and only one then get through. */
  private <T extends @Nullable Object> T changeOnServer(Function<Ledger, T> work) {
    try {
      return jdbi.inTransaction(handle -> work.apply(new Ledger(handle)));
    } catch (JdbiException e) {
      if (e.getCause() instanceof SQLException cause && THERE_ALREADY.equals(cause.getSQLState())) {
        throw new Conflict(Conflict.Kind.TAKEN, "somebody entered the same just now");
      }
      throw Unavailable.instead(e, false);
    }
  }

  @Override
  public void close() {
    source.close();
  }
}
