package io.github.tiderule.cases.whelping;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.lessThanOrEqualTo;

import io.github.tiderule.cases.cohort.Calendar;
import io.github.tiderule.engine.Tiderule;
import io.github.tiderule.engine.advice.course.Caesarean;
import io.github.tiderule.rules.conclusion.care.CaesareanVerdict;
import java.time.LocalTime;
import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The chance that a planned caesarean comes too early is what it says, over a small cohort. */
class CaesareanChanceTest {

  private static final Tiderule ENGINE = Tiderule.create();
  private static final int COUNT = 200;

  /** Days after ovulation before which pups are not ready. */
  private static final double READY = 61;

  private record Planned(double chance, boolean early, CaesareanVerdict verdict) {}

  private static Stream<Planned> planned(int number) {
    SimulatedPregnancy one =
        SimulatedPregnancy.draw(GestationLaw.FROM_OVULATION, Keeping.PROGESTERONE, 9, number);
    Caesarean caesarean = ENGINE.advise(one.known()).course().caesarean();
    if (!one.bitch().ovulates() || caesarean == null) {
      return Stream.empty();
    }
    return Objects.requireNonNull(caesarean).days().stream()
        .map(
            day -> {
              double noon =
                  Calendar.day(day.day().atTime(LocalTime.NOON).atZone(Calendar.ZONE).toInstant());
              return new Planned(
                  day.chanceEarly(), noon - one.bitch().ovulation() < READY, day.verdict());
            });
  }

  @Test
  void theChanceOfTooEarlyIsWhatItSays() {
    List<Planned> all =
        IntStream.range(0, COUNT).parallel().boxed().flatMap(CaesareanChanceTest::planned).toList();
    double expected = all.stream().mapToDouble(Planned::chance).average().orElseThrow();
    double early = all.stream().filter(Planned::early).count() / (double) all.size();
    assertThat(all.size(), is(greaterThan(5 * COUNT)));
    assertThat(early, is(closeTo(expected, 0.03)));
    List<Planned> advised =
        all.stream()
            .filter(
                day ->
                    day.verdict() == CaesareanVerdict.PREFERRED
                        || day.verdict() == CaesareanVerdict.POSSIBLE)
            .toList();
    assertThat(advised.size(), is(greaterThan(COUNT)));
    assertThat(
        advised.stream().filter(Planned::early).count() / (double) advised.size(),
        is(lessThanOrEqualTo(0.01)));
  }
}
