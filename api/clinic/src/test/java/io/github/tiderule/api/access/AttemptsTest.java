package io.github.tiderule.api.access;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.lessThanOrEqualTo;

import java.time.Duration;
import java.time.Instant;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class AttemptsTest {

  private static final Instant NOW = Instant.parse("2027-01-13T12:00:00Z");

  private final Attempts attempts = new Attempts();

  private Duration begin(String name, String address) {
    return attempts.begin(name, address, false, NOW);
  }

  @Test
  void manyAtOnceAreCountedBeforeAnyIsLookedAt() throws Exception {
    long begun =
        IntStream.range(0, 48).parallel().filter(i -> begin("anna", "192.0.2.1").isZero()).count();
    assertThat(begun, is(5L));
  }

  @Test
  void strangersDoNotLockANameOut() {
    for (int i = 0; i < 500; i++) {
      begin("anna", "198.51.100." + i % 250);
    }
    assertThat(attempts.isTriedByMany("anna"), is(true));
    assertThat(attempts.begin("anna", "192.0.2.1", true, NOW), is(Duration.ZERO));
    Duration stranger = begin("anna", "192.0.2.2");
    assertThat(stranger, greaterThan(Duration.ZERO));
    assertThat(stranger, lessThanOrEqualTo(Duration.ofSeconds(30)));
    assertThat(begin("berta", "192.0.2.2"), is(Duration.ZERO));
  }

  @Test
  void whoTriesManyNamesWaitsForAnyName() {
    for (int i = 0; i < 20; i++) {
      assertThat(begin("name " + i, "192.0.2.1"), is(Duration.ZERO));
    }
    assertThat(begin("another", "192.0.2.1"), greaterThan(Duration.ZERO));
    assertThat(begin("another", "192.0.2.2"), is(Duration.ZERO));
  }

  @Test
  void oneNetworkIsOneHoweverManyAddressesItHas() {
    for (int i = 0; i < 5; i++) {
      begin("anna", "2001:db8:0:1::" + i);
    }
    assertThat(begin("anna", "2001:db8:0:1:ffff::9"), greaterThan(Duration.ZERO));
    assertThat(begin("anna", "2001:db8:0:2::1"), is(Duration.ZERO));
  }

  @Test
  void aSuccessForgets() {
    for (int i = 0; i < 4; i++) {
      begin("anna", "192.0.2.1");
    }
    attempts.succeeded("anna", "192.0.2.1");
    for (int i = 0; i < 5; i++) {
      assertThat(begin("anna", "192.0.2.1"), is(Duration.ZERO));
    }
  }
}
