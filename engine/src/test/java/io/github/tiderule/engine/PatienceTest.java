package io.github.tiderule.engine;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.lessThan;
import static org.junit.jupiter.api.Assertions.assertThrows;

import io.github.tiderule.rules.fact.Certainty;
import io.github.tiderule.rules.fact.FirstBlood;
import io.github.tiderule.rules.fact.assay.Method;
import io.github.tiderule.rules.fact.assay.Unit;
import io.github.tiderule.rules.fact.observation.Observation;
import io.github.tiderule.rules.fact.observation.Progesterone;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;

/** Nothing goes on for long after whoever asked waits no more. */
class PatienceTest {

  private static final Tiderule ENGINE = Tiderule.create();
  private static final int MOST_RESULTS = 500;
  private static final int LONG = 60;

  private static CycleRecord season(int results) {
    Instant first = Instant.parse("2027-03-04T07:00:00Z");
    List<Observation> all = new ArrayList<>();
    for (int i = 0; i < results; i++) {
      Instant at = first.plus(Duration.ofMinutes(9L * 1440 * i / results));
      double days = Duration.between(first, at).toMinutes() / 1440.0;
      double value = Math.round(100 * (0.6 + 1.6 * Math.pow(1.6, days - 5))) / 100.0;
      Progesterone.Result result =
          i % 3 == 2
              ? Progesterone.below(value + 0.5, Unit.NG_PER_ML)
              : Progesterone.of(value, Unit.NG_PER_ML);
      all.add(result.drawn(at).method(Method.CLIA).laboratory("A").withId("p" + i));
    }
    return CycleRecord.on(first.plus(Duration.ofDays(9)), ZoneId.of("Europe/Vienna"))
        .firstBlood(new FirstBlood(LocalDate.of(2027, 3, 1), Certainty.SEEN))
        .addAll(all)
        .build();
  }

  @Test
  void whatIsEnoughAtOnceIsNotBegun() {
    AtomicInteger asked = new AtomicInteger();
    assertThrows(
        CancellationException.class,
        () -> Tiderule.until(() -> asked.incrementAndGet() > 0, () -> ENGINE.advise(season(5))));
    assertThat(asked.get(), is(1));
    ENGINE.advise(season(5));
  }

  @Test
  void itIsAskedOftenInALongSeason() {
    CycleRecord cycle = season(LONG);
    AtomicLong last = new AtomicLong(System.nanoTime());
    AtomicLong longest = new AtomicLong();
    Tiderule.until(
        () -> {
          long now = System.nanoTime();
          longest.accumulateAndGet(now - last.getAndSet(now), Math::max);
          return false;
        },
        () -> ENGINE.advise(cycle));
    assertThat(longest.get(), lessThan(Duration.ofSeconds(10).toNanos()));
  }

  @Test
  void itGivesUpSoonAfter() {
    CycleRecord cycle = season(MOST_RESULTS);
    long from = System.nanoTime();
    assertThrows(
        CancellationException.class,
        () ->
            Tiderule.until(
                () -> System.nanoTime() - from > Duration.ofMillis(300).toNanos(),
                () -> ENGINE.advise(cycle)));
    assertThat(System.nanoTime() - from, lessThan(Duration.ofSeconds(12).toNanos()));
  }
}
