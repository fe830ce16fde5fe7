package io.github.tiderule.engine.timeline;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.lessThan;

import io.github.tiderule.rules.RuleBase;
import io.github.tiderule.rules.fact.Certainty;
import io.github.tiderule.rules.fact.EarlierCycle;
import io.github.tiderule.rules.fact.FirstBlood;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** What her earlier seasons say of the present one: here seasons of ovulation on day 18. */
class OwnHistoryTest {

  private static final Timeline TIMELINE = Timeline.of(RuleBase.load().parameters());
  private static final LocalDate BLOOD = LocalDate.of(2026, 5, 1);
  private static final LocalDate OVULATED = BLOOD.plusDays(18);

  private static Density ovulation(EarlierCycle... earlier) {
    Evidence evidence =
        new Evidence(
            new FirstBlood(LocalDate.of(2027, 1, 3), Certainty.SEEN),
            0.5,
            5,
            List.of(earlier),
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            List.of());
    return TIMELINE.estimate(evidence).ovulation();
  }

  private static EarlierCycle season(
      @Nullable LocalDate ovulated, @Nullable LocalDate shifted, @Nullable LocalDate whelped) {
    return new EarlierCycle(BLOOD, ovulated, shifted, whelped, null, null);
  }

  private static double median(EarlierCycle... earlier) {
    return ovulation(earlier).quantile(0.5);
  }

  private static double width(EarlierCycle... earlier) {
    Density density = ovulation(earlier);
    return density.quantile(0.95) - density.quantile(0.05);
  }

  @Test
  void theCloserASeasonWasDatedTheMoreItSays() {
    EarlierCycle dated = season(OVULATED, null, null);
    EarlierCycle shifted = season(null, OVULATED.plusDays(6), null);
    EarlierCycle whelped = season(null, null, OVULATED.plusDays(63));
    assertThat(median(dated), is(greaterThan(median(shifted))));
    assertThat(median(shifted), is(greaterThan(median(whelped))));
    assertThat(median(whelped), is(greaterThan(median() + 0.5)));
    // a later ovulation is less closely foreseen, so widths are told in parts of the time to it
    assertThat(width(dated) / median(dated), is(lessThan(width(whelped) / median(whelped))));
    // a shift dates ovulation to within a day or so: nearly as good as a dated one
    assertThat(median(shifted), is(closeTo(median(dated), 0.1)));
  }

  @Test
  void whatDatesASeasonBestIsTakenAlone() {
    LocalDate whelped = OVULATED.plusDays(70);
    assertThat(
        median(season(OVULATED, OVULATED.plusDays(9), whelped)),
        is(median(season(OVULATED, null, null))));
    assertThat(
        median(season(null, OVULATED.plusDays(6), whelped)),
        is(median(season(null, OVULATED.plusDays(6), null))));
  }

  @Test
  void aSeasonThatCannotBeIsNotTaken() {
    assertThat(median(season(null, null, BLOOD.plusDays(20))), is(median()));
  }
}
