package io.github.tiderule.api.picture;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.not;

import io.github.tiderule.api.report.text.Telling;
import io.github.tiderule.format.Seasons;
import io.github.tiderule.format.Seasons.Season;
import org.junit.jupiter.api.Test;

class TemperatureCurveTest {

  private static TemperatureCurve curve(String observations) {
    Season season =
        Seasons.text(
            """
            {"schema": "tiderule/cycle/1", "asOf": "2027-03-15T20:00:00+01:00",
             "zone": "Europe/Vienna", "female": {"name": "Fern <i> (invented)"},
             "firstBlood": {"on": "2027-01-01", "certainty": "seen"},
             "observations": ["""
                + observations
                + "]}");
    return TemperatureCurve.of(
        CurveInput.of(season.cycle(), season.reasoning(), Telling.onTerminal(season.cycle())),
        CurveSize.PHONE);
  }

  private static String reading(int number, String at, double celsius) {
    return "{\"id\": \"t%d\", \"kind\": \"temperature\", \"at\": \"2027-03-%s:00+01:00\", \"celsius\": %s}"
        .formatted(number, at, celsius);
  }

  @Test
  void aFallIsToldAgainstHerOwnMean() {
    TemperatureCurve curve =
        curve(
            String.join(
                ",",
                reading(1, "13T08:00", 38.0),
                reading(2, "13T20:00", 38.2),
                reading(3, "14T08:00", 38.1),
                reading(4, "15T08:00", 37.2)));
    assertThat(curve.isWorthDrawing(), is(true));
    assertThat(
        curve.description(),
        containsString("37.2 °C on Mon 15 Mar 2027, 08:00: 0.9 °C below her own mean."));
    Drawn drawn = Drawn.of(curve.svg("heat"));
    assertThat(drawn.all("circle"), hasSize(4));
    assertThat(drawn.texts(), hasItem("her own mean until then"));
    assertThat(curve.svg("heat"), not(containsString("NaN")));
    assertThat(curve.svg("heat"), not(containsString("<i>")));
  }

  @Test
  void oneReadingIsNoCurve() {
    assertThat(curve(reading(1, "13T08:00", 38.0)).isWorthDrawing(), is(false));
  }
}
