package io.github.tiderule.engine.insemination;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.nullValue;

import io.github.tiderule.engine.advice.Amount;
import io.github.tiderule.engine.advice.SemenTemperature;
import io.github.tiderule.rules.fact.semen.Semen;
import io.github.tiderule.rules.parameter.Parameters;
import io.github.tiderule.rules.semen.Wanted;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Extender and temperature reckoned by hand, beside what the engine makes of it. */
class DilutionTest {

  private static final Parameters PARAMETERS = Parameters.load();

  private static SemenInHand inHand(@Nullable Double millilitres, @Nullable Span sperm) {
    return new SemenInHand(
        Semen.FRESH, millilitres, sperm, null, null, null, null, List.of(), List.of());
  }

  private static Amount added(
      SemenInHand inHand, @Nullable Double ml, @Nullable Double per, int n) {
    return Dilution.of(inHand, new Wanted(ml, per, n), n).orElseThrow();
  }

  /** 2 doses × 4 mL = 8 mL; 8 − 2.5 mL in hand = 5.5 mL. */
  @Test
  void forAWantedVolume() {
    Amount amount = added(inHand(2.5, null), 4.0, null, 2);
    assertThat(amount.least(), is(5.5));
    assertThat(amount.most(), is(5.5));
    assertThat(amount.working().toString(), is("2 × 4 mL wanted − 2.5 mL in hand"));
  }

  /** 750 million ÷ 100 million/mL = 7.5 mL; 7.5 − 2.5 = 5 mL. */
  @Test
  void forAWantedConcentration() {
    assertThat(added(inHand(2.5, Span.of(750)), null, 100.0, 1).most(), is(5.0));
  }

  /** 800 to 1,500 million in 2 mL at 100 million/mL: 8 to 15 mL, so 6 to 13 mL to add. */
  @Test
  void aRangeOfSpermIsARangeOfExtender() {
    Amount amount = added(inHand(2.0, new Span(800, 1500)), null, 100.0, 1);
    assertThat(amount.least(), is(6.0));
    assertThat(amount.most(), is(13.0));
  }

  /**
   * 2 doses × 4 mL at 50 million/mL need 400 million; of 300 million/mL that is 1.333 mL of semen,
   * and 8 − 1.333 = 6.667 mL of extender.
   */
  @Test
  void forBoth() {
    Amount amount = added(inHand(2.5, Span.of(750)), 4.0, 50.0, 2);
    assertThat(amount.least(), is(closeTo(6.6667, 0.0001)));
    assertThat(amount.working().toString(), not(containsString("more semen")));
  }

  /**
   * 4 mL at 300 million/mL need 1,200 million, and 750 are there: 4 mL of semen, and 2.5 in hand.
   */
  @Test
  void moreThanThereIsIsSaid() {
    Amount amount = added(inHand(2.5, Span.of(750)), 4.0, 300.0, 1);
    assertThat(amount.working().toString(), containsString("more semen than the 2.5 mL in hand"));
    assertThat(amount.most(), is(0.0));
  }

  @Test
  void nothingIsTakenAway() {
    assertThat(added(inHand(6.0, null), 4.0, null, 1).most(), is(0.0));
  }

  @Test
  void whatIsNotKnownIsNotReckoned() {
    assertThat(
        Dilution.of(inHand(null, Span.of(750)), new Wanted(4.0, null, 1), 1), is(Optional.empty()));
    assertThat(Dilution.of(inHand(2.5, null), new Wanted(null, 50.0, 1), 1), is(Optional.empty()));
    assertThat(Dilution.of(inHand(2.5, Span.of(750)), Wanted.nothing(), 1), is(Optional.empty()));
  }

  /** Semen at 36 °C and extender at 20 °C: warm it by 16 °C; everything else at 35 to 37 °C. */
  @Test
  void theExtenderIsBroughtToTheSemen() {
    SemenTemperature match = TemperatureMatch.of(Semen.FRESH, 36.0, 20.0, PARAMETERS);
    assertThat(match.leastC(), is(35.0));
    assertThat(match.mostC(), is(37.0));
    assertThat(match.extenderShiftC(), is(16.0));
    assertThat(match.text().toString(), containsString("Warm the extender by 16 °C"));
  }

  @Test
  void withoutAThermometerBodyHeatStandsIn() {
    SemenTemperature match = TemperatureMatch.of(Semen.FRESH, null, 20.0, PARAMETERS);
    assertThat(match.semenC(), is(nullValue()));
    assertThat(match.extenderShiftC(), is(nullValue()));
    assertThat(match.text().toString(), containsString("37 to 39 °C"));
  }

  @Test
  void frozenSemenFollowsItsSheet() {
    SemenTemperature match = TemperatureMatch.of(Semen.FROZEN, null, 20.0, PARAMETERS);
    assertThat(match.leastC(), is(nullValue()));
    assertThat(match.text().toString(), containsString("sheet alone"));
  }
}
