package io.github.tiderule.engine;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.nullValue;

import java.util.List;
import org.junit.jupiter.api.Test;

class AccuracyTest {

  @Test
  void ofThreeSeasons() {
    Accuracy accuracy =
        Accuracy.of(
            List.of(
                new Accuracy.Season(-1, true),
                new Accuracy.Season(0.5, true),
                new Accuracy.Season(3, false)));
    assertThat(accuracy.seasons(), is(3));
    assertThat(accuracy.medianDays(), is(closeTo(1, 1e-9)));
    // four fifths of the way from 1 to 3
    assertThat(accuracy.p90Days(), is(closeTo(2.6, 1e-9)));
    assertThat(accuracy.biasDays(), is(closeTo(2.5 / 3, 1e-9)));
    assertThat(accuracy.within(), is(closeTo(2 / 3.0, 1e-9)));
    // Wilson's score: from 20.8 to 93.9 %
    assertThat(accuracy.withinLow(), is(closeTo(0.208, 0.001)));
    assertThat(accuracy.withinHigh(), is(closeTo(0.939, 0.001)));
    assertThat(accuracy.few(), is(true));
  }

  @Test
  void ofOneSeasonAndOfNone() {
    Accuracy one = Accuracy.of(List.of(new Accuracy.Season(-2, true)));
    assertThat(one.medianDays(), is(closeTo(2, 1e-9)));
    assertThat(one.p90Days(), is(closeTo(2, 1e-9)));
    assertThat(one.withinHigh(), is(closeTo(1, 1e-9)));
    assertThat(Accuracy.of(List.of()).medianDays(), is(nullValue()));
  }
}
