package io.github.tiderule.api.record.store;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.is;

import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;

/** The record on a database server: a real one, from the system's packages. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class PostgresStoreTest extends StoreTest {

  private @Nullable PostgresServer server;

  @BeforeAll
  void start() {
    server = PostgresServer.start();
  }

  @AfterAll
  void stop() {
    if (server != null) {
      server.close();
    }
  }

  @Override
  Address empty() {
    if (server == null) {
      throw new AssertionError("the server was not started");
    }
    return server.database();
  }

  @Test
  void itIsTheServerThatAnswers() {
    try (Store store = Store.open(empty())) {
      String version =
          store.read(
              ledger -> ledger.handle().createQuery("SELECT version()").mapTo(String.class).one());
      assertThat(version.startsWith("PostgreSQL "), is(true));
      assertThat(store.isEmbedded(), is(false));
    }
  }
}
