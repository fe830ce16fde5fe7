package io.github.tiderule.api.picture;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.everyItem;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.greaterThanOrEqualTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasItems;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.lessThanOrEqualTo;
import static org.hamcrest.Matchers.not;
import static org.junit.jupiter.api.Assertions.assertThrows;

import io.github.tiderule.api.picture.svg.Colour;
import io.github.tiderule.api.picture.svg.Marker;
import io.github.tiderule.api.picture.svg.Raster;
import io.github.tiderule.api.picture.svg.Svg;
import io.github.tiderule.api.report.text.Telling;
import io.github.tiderule.format.Seasons;
import io.github.tiderule.format.Seasons.Season;
import io.github.tiderule.format.node.Markup;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;

class CurveTest {

  private static final String DENSE = "/io/github/tiderule/api/picture/dense-season.json";
  private static final Season SEASON = Seasons.resource(DENSE);
  private static final Pattern FORBIDDEN =
      Pattern.compile("<script|<style|<foreignObject| style=| on[a-z]+=|href=|url\\(");

  private static Curve curve(Season season, CurveSize size) {
    return Curve.of(
        CurveInput.of(season.cycle(), season.reasoning(), Telling.onTerminal(season.cycle())),
        size);
  }

  private static Drawn drawn(Season season, CurveSize size) {
    return Drawn.of(curve(season, size).svg("curve"));
  }

  private static List<String> meetings(Drawn drawn) {
    List<String> meetings = new ArrayList<>();
    List<Drawn.Words> words = drawn.words();
    for (int i = 0; i < words.size(); i++) {
      for (int j = 0; j < i; j++) {
        if (words.get(i).meets(words.get(j))) {
          meetings.add(words.get(j).text() + " on " + words.get(i).text());
        }
      }
    }
    return meetings;
  }

  @Test
  void isWholeAndHarmlessForEverySeasonAndSize() {
    for (Season season : Seasons.many()) {
      for (CurveSize size : CurveSize.values()) {
        String svg = curve(season, size).svg("curve");
        String where = season.name() + ", " + size;
        assertThat(where, FORBIDDEN.matcher(svg).find(), is(false));
        assertThat(where, svg, not(containsString("NaN")));
        Drawn drawn = Drawn.of(svg);
        assertThat(where, meetings(drawn), is(empty()));
        for (Drawn.Words words : drawn.words()) {
          assertThat(where + ": " + words, words.left(), greaterThanOrEqualTo(-1.0));
          assertThat(where + ": " + words, words.right(), lessThanOrEqualTo(drawn.breadth() + 1));
          assertThat(where + ": " + words, words.bottom(), lessThanOrEqualTo(drawn.height()));
        }
      }
    }
  }

  @Test
  void noLabelLiesOnAnotherInADenseSeason() {
    for (CurveSize size : CurveSize.values()) {
      assertThat(size.name(), meetings(drawn(SEASON, size)), is(empty()));
    }
    // the test would see one
    Drawn.Words one = new Drawn.Words("a", 0, 0, 10, 10);
    assertThat(one.meets(new Drawn.Words("b", 9, 9, 20, 20)), is(true));
  }

  @Test
  void saysWhatItIsToThoseWhoDoNotSeeIt() {
    Drawn drawn = drawn(SEASON, CurveSize.PHONE);
    assertThat(drawn.document().getDocumentElement().getAttribute("role"), is("img"));
    assertThat(
        drawn.document().getDocumentElement().getAttribute("aria-labelledby"),
        is("curve-title curve-desc"));
    assertThat(
        drawn.all("title").get(0).getTextContent(),
        is("Progesterone and timing of Fern <i> & Жучка Δ (invented)"));
    String description = drawn.all("desc").get(0).getTextContent();
    assertThat(description, containsString("25 values; the latest is "));
    assertThat(description, containsString("Ovulation around "));
    assertThat(description, containsString("Planned breedings: "));
  }

  @Test
  void eachSeriesHasAShapeOfItsOwn() {
    Set<String> shapes = new HashSet<>();
    for (Marker marker : Marker.values()) {
      Svg svg = new Svg();
      marker.draw(svg, 50, 50, 5, true);
      shapes.add(svg.toString().replaceAll("#[0-9a-f]{6}", ""));
    }
    assertThat(shapes.size(), is(Marker.values().length));
    Set<String> dashes = new HashSet<>();
    for (Marker marker : Marker.values()) {
      dashes.add(marker.dash());
    }
    assertThat(dashes.size(), is(Marker.values().length));
    assertThat(
        drawn(SEASON, CurveSize.SCREEN).texts(),
        hasItems("<B&\"'> lab, eclia", "Nordtal Diagnostik und La…, clia"));
  }

  @Test
  void bothUnitsStandAtTheSides() {
    Drawn drawn = drawn(SEASON, CurveSize.SCREEN);
    assertThat(drawn.texts(), hasItems("ng/mL", "nmol/L"));
    LevelScale levels = LevelScale.holding(0.4, 20, 300, 0);
    assertThat(levels.y(10 / 3.18), greaterThan(levels.y(10)));
    // equal ratios are equal distances
    assertThat(levels.y(1) - levels.y(2), closeTo(levels.y(5) - levels.y(10), 1e-9));
    assertThat(levels.y(0.001), is(300.0));
    assertThat(levels.y(9e9), is(0.0));
  }

  @Test
  void aValueWithoutAUnitIsDrawnAtBothReadingsAndCrossed() {
    Season season =
        Seasons.text(
            """
            {"schema": "tiderule/cycle/1", "asOf": "2027-03-10T12:00:00+01:00",
             "zone": "Europe/Vienna", "firstBlood": {"on": "2027-03-01", "certainty": "seen"},
             "observations": [{"id": "p1", "kind": "progesterone", "value": 6.4,
               "at": "2027-03-10T08:00:00+01:00", "method": "clia", "laboratory": "A"}]}
            """);
    Drawn drawn = drawn(season, CurveSize.SCREEN);
    List<Double> rings =
        drawn.all("circle").stream()
            .filter(circle -> circle.getAttribute("fill").equals(Colour.PAPER.hex()))
            .filter(circle -> Drawn.number(circle, "cy") > 60)
            .map(circle -> Drawn.number(circle, "cy"))
            .toList();
    assertThat(rings.size(), is(2));
    assertThat(rings.get(1), greaterThan(rings.get(0)));
    assertThat(drawn.texts(), hasItem("6.4 unit? held"));
    assertThat(drawn.texts(), hasItem("held, not used"));
  }

  @Test
  void theDayClocksGoForwardIsShorter() {
    TimeScale times =
        TimeScale.of(
            CurveInput.of(SEASON.cycle(), SEASON.reasoning(), Telling.onTerminal(SEASON.cycle())),
            0,
            1000);
    LocalDate change = LocalDate.of(2027, 3, 28);
    double usual = times.x(change) - times.x(change.minusDays(1));
    double shorter = times.x(change.plusDays(1)) - times.x(change);
    assertThat(shorter / usual, closeTo(23 / 24.0, 1e-9));
    assertThat(times.x(times.first()), is(0.0));
    assertThat(times.x(times.end()), closeTo(1000, 1e-9));
  }

  /** Two months later the days of the season are drawn, and not the weeks since. */
  @Test
  void afterWhelpingItIsStillTheSeasonThatIsDrawn() {
    Season whelped =
        Seasons.text(
            """
            {"schema": "tiderule/cycle/1", "asOf": "2027-03-20T12:00:00+01:00",
             "zone": "Europe/Vienna", "firstBlood": {"on": "2027-01-03", "certainty": "seen"},
             "outcome": {"pregnant": true, "whelpedOn": "2027-03-17"},
             "observations": [
              {"id": "p1", "kind": "progesterone", "at": "2027-01-11T08:00:00+01:00", "value": 0.8,
               "unit": "ng/mL"},
              {"id": "p2", "kind": "progesterone", "at": "2027-01-13T08:00:00+01:00", "value": 2.4,
               "unit": "ng/mL"},
              {"id": "p3", "kind": "progesterone", "at": "2027-01-15T08:00:00+01:00", "value": 6.1,
               "unit": "ng/mL"},
              {"id": "m1", "kind": "breeding", "at": "2027-01-16T10:00:00+01:00",
               "semen": "natural", "route": "natural"}]}""");
    TimeScale times =
        TimeScale.of(
            CurveInput.of(
                whelped.cycle(), whelped.reasoning(), Telling.onTerminal(whelped.cycle())),
            0,
            1000);
    whelped
        .cycle()
        .observations()
        .forEach(one -> assertThat(one.id(), times.holds(one.at()), is(true)));
    assertThat(times.end().isBefore(LocalDate.of(2027, 2, 10)), is(true));
  }

  @Test
  void theTableHoldsEveryObservationInBothUnits() {
    List<CurveRow> rows = curve(SEASON, CurveSize.PHONE).rows();
    assertThat(rows.size(), is(SEASON.cycle().observations().size()));
    CurveRow limit = row(rows, "a3");
    assertThat(limit.asReported(), is("<0.4 ng/mL"));
    assertThat(limit.ngPerMl(), is("<0.4"));
    assertThat(limit.nmolPerL(), is("<1.27"));
    CurveRow converted = row(rows, "b14");
    assertThat(converted.asReported(), is("55.6 nmol/L"));
    assertThat(converted.ngPerMl(), is("17.5"));
    assertThat(row(rows, "q1").ngPerMl(), is(""));
    assertThat(row(rows, "q1").use(), is("held"));
    assertThat(row(rows, "k1").nmolPerL(), is("3.18–7.95"));
    assertThat(row(rows, "k2").asReported(), is(">5 ng/mL"));
    assertThat(row(rows, "c20").asReported(), is("35 % cornified, few neutrophils"));
    assertThat(row(rows, "s20").asReported(), is("stands, not seen"));
    assertThat(row(rows, "l27").asReported(), is("positive"));
    assertThat(row(rows, "m1").asReported(), is("chilled, transcervical"));
    assertThat(row(rows, "a11").at().toString(), is("2027-03-28T08:00+02:00"));
  }

  private static CurveRow row(List<CurveRow> rows, String id) {
    return rows.stream().filter(row -> row.observation().equals(id)).findFirst().orElseThrow();
  }

  @Test
  void nothingKnownIsSaidToBeNothing() {
    Season blank =
        Seasons.text(
            """
            {"schema": "tiderule/cycle/1", "asOf": "2027-03-10T12:00:00+01:00",
             "zone": "Europe/Vienna", "firstBlood": {"certainty": "unknown"}, "observations": []}
            """);
    Drawn drawn = drawn(blank, CurveSize.PHONE);
    assertThat(drawn.texts(), hasItem("no progesterone value yet"));
    assertThat(drawn.all("desc").get(0).getTextContent(), containsString("There is no value yet."));
  }

  @Test
  void charactersThatActBecomeSpaces() {
    assertThat(
        Markup.escaped("a\u0000b\u202Ec\uFFFEd\uD800<&>\"'"),
        is("a b c d &lt;&amp;&gt;&quot;&#39;"));
  }

  @Test
  void idsBeginWithTheNameGivenAndNothingElseIsAName() {
    String svg = curve(SEASON, CurveSize.PHONE).svg("phone");
    assertThat(
        Drawn.of(svg).all("*").stream()
            .map(element -> element.getAttribute("id"))
            .filter(id -> !id.isEmpty())
            .toList(),
        everyItem(containsString("phone-")));
    assertThrows(
        IllegalArgumentException.class, () -> curve(SEASON, CurveSize.PHONE).svg("a\" onload=\""));
  }

  @Test
  void drawnTwiceItIsTheSame() {
    Curve curve = curve(SEASON, CurveSize.PAPER);
    assertThat(curve.svg("c"), equalTo(curve.svg("c")));
    assertThat(curve(SEASON, CurveSize.PAPER).svg("c"), equalTo(curve.svg("c")));
  }

  @Test
  void becomesAnImageOfItsOwnShape() throws IOException {
    String svg = curve(SEASON, CurveSize.SCREEN).svg("curve");
    BufferedImage image = ImageIO.read(new ByteArrayInputStream(Raster.png(svg, 760)));
    Drawn drawn = Drawn.of(svg);
    assertThat(image.getWidth(), is(760));
    assertThat((double) image.getHeight(), closeTo(drawn.height(), 2));
    Set<Integer> colours = new HashSet<>();
    for (int x = 0; x < image.getWidth(); x += 3) {
      for (int y = 0; y < image.getHeight(); y += 3) {
        colours.add(image.getRGB(x, y));
      }
    }
    assertThat(colours.size(), greaterThan(50));
    assertThrows(IllegalArgumentException.class, () -> Raster.png(svg, 0));
    assertThrows(IllegalArgumentException.class, () -> Raster.png("no picture", 100));
  }
}
