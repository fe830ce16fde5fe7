package io.github.tiderule.cases.cohort;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.instanceOf;
import static org.hamcrest.Matchers.is;

import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.format.cycle.CycleFile;
import io.github.tiderule.format.cycle.Reading;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What is written of an invented season is read as that season. */
class CohortCyclesTest {

  private static final int NUMBERS = 40;

  @Test
  void isReadAsTheSeasonItWas() {
    for (SamplingHabit habit : CohortReport.habits()) {
      for (int number = 0; number < NUMBERS; number++) {
        Optional<Season> season = habit.sample(Bitches.draw(1, number), Draws.of(2, number));
        season.ifPresent(CohortCyclesTest::holds);
      }
    }
  }

  private static void holds(Season season) {
    CycleRecord expected = season.cycle();
    Reading reading = CycleFile.read(CohortCycles.line(season).getBytes(UTF_8));
    assertThat(reading.toString(), reading, instanceOf(Reading.Read.class));
    CycleRecord read = ((Reading.Read) reading).cycle();
    assertThat(read.asOf(), is(expected.asOf()));
    assertThat(read.zone(), is(expected.zone()));
    assertThat(read.firstBlood(), is(expected.firstBlood()));
    assertThat(read.observations(), is(expected.observations()));
  }
}
