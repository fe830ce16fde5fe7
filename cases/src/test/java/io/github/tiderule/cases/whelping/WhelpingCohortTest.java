package io.github.tiderule.cases.whelping;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.greaterThanOrEqualTo;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.lessThanOrEqualTo;

import io.github.tiderule.engine.Tiderule;
import org.junit.jupiter.api.Test;

/** Small cohorts; the report has the larger ones. */
class WhelpingCohortTest {

  private static final int COUNT = 120;
  private static final Tiderule ENGINE = Tiderule.create();

  private static WhelpingScore score(GestationLaw law, Keeping keeping) {
    return WhelpingScore.of(ENGINE, law, keeping, 5, COUNT);
  }

  @Test
  void fromOvulationTheIntervalsHoldWhatTheyPromise() {
    WhelpingScore score = score(GestationLaw.FROM_OVULATION, Keeping.PROGESTERONE);
    // 90 % of 120, give or take three standard errors
    assertThat(score.held(), is(closeTo(0.9, 0.083)));
    assertThat(score.median(), is(lessThanOrEqualTo(1.9)));
    assertThat(score.bias(), is(closeTo(0, 0.6)));
  }

  @Test
  void fromTheShiftWhelpingIsForetoldAsCloselyAsWasPublished() {
    WhelpingScore score = score(GestationLaw.FROM_SHIFT, Keeping.SMEARS);
    assertThat(score.held(), is(closeTo(0.9, 0.083)));
    assertThat(score.median(), is(lessThanOrEqualTo(0.9)));
    // published: 88 and 99 % within one and two days
    assertThat(score.withinDays().get(0), is(greaterThanOrEqualTo(0.75)));
    assertThat(score.withinDays().get(1), is(greaterThanOrEqualTo(0.95)));
  }

  @Test
  void aScanAndACountOfPupsHelp() {
    WhelpingScore without = score(GestationLaw.FROM_OVULATION, Keeping.PROGESTERONE);
    WhelpingScore with = score(GestationLaw.FROM_OVULATION, Keeping.SCAN);
    assertThat(with.median(), is(lessThanOrEqualTo(without.median() - 0.2)));
    assertThat(with.held(), is(greaterThanOrEqualTo(0.82)));
  }

  @Test
  void aFallOfTemperatureNamesTheDay() {
    WhelpingScore score = score(GestationLaw.FROM_OVULATION, Keeping.TEMPERATURES);
    assertThat(score.median(), is(lessThanOrEqualTo(0.4)));
    assertThat(score.held(), is(greaterThanOrEqualTo(0.8)));
  }
}
