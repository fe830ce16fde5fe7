package io.github.tiderule.rules.fact;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.is;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Random;
import org.junit.jupiter.api.Test;

class DigitsTest {

  /** Whichever way a number takes, it ends where exact decimal arithmetic does. */
  @Test
  void roundsAsExactArithmeticDoes() {
    Random random = new Random(12);
    for (int i = 0; i < 200_000; i++) {
      int decimals = random.nextInt(10);
      double written =
          BigDecimal.valueOf(random.nextInt(2_000_000_000) - 1_000_000_000L, decimals)
              .doubleValue();
      double value = random.nextBoolean() ? written : written / 3.18;
      int digits = 1 + random.nextInt(17);
      double exact =
          new BigDecimal(value).round(new MathContext(digits, RoundingMode.HALF_UP)).doubleValue();
      assertThat(value + " to " + digits, Digits.significant(value, digits), is(exact));
    }
  }

  @Test
  void leavesAloneWhatIsNoNumber() {
    assertThat(Digits.significant(Double.NaN, 3), is(Double.NaN));
    assertThat(Digits.significant(Double.NEGATIVE_INFINITY, 3), is(Double.NEGATIVE_INFINITY));
    assertThat(Digits.significant(0, 3), is(0.0));
  }
}
