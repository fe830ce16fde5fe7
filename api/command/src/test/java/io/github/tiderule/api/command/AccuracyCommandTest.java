package io.github.tiderule.api.command;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.is;

import io.github.tiderule.api.command.stream.ExitStatus;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.AdviceCourse;
import io.github.tiderule.engine.advice.course.LookBack;
import io.github.tiderule.engine.advice.course.Quantiles;
import io.github.tiderule.format.Documents;
import io.github.tiderule.format.SampleAdvice;
import io.github.tiderule.format.json.Schemas;
import io.github.tiderule.rules.sentence.Sentence;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code accuracy} about its lines and output; the engine's answer is a given one. */
class AccuracyCommandTest {

  private static final OffsetDateTime FORETOLD = OffsetDateTime.parse("2027-03-18T12:00:00+01:00");

  private static final String OUTCOME =
      "\"outcome\": {\"pregnant\": true, \"whelpedOn\": \"2027-01-12\", \"litterSize\": 5}";

  @TempDir private Path directory = Path.of("");

  private static Advice whelped() {
    Advice a = SampleAdvice.full();
    Quantiles ovulation = new Quantiles(FORETOLD, FORETOLD, FORETOLD, FORETOLD, FORETOLD);
    return a.with(
        AdviceCourse.NONE.withLookBack(
            new LookBack(
                LocalDate.of(2027, 3, 19),
                FORETOLD,
                FORETOLD.minusDays(3),
                FORETOLD.plusDays(3),
                1,
                true,
                ovulation,
                Sentence.of("A day later"))));
  }

  private static String lines(int count) {
    return (Documents.fullCycle().replace("\n", " ") + "\n").repeat(count);
  }

  @Test
  void tellsErrorsAndThatThereAreFew() {
    Ran ran = Ran.withEngine(cycle -> whelped(), lines(2), "accuracy");
    assertThat(ran.status(), is(ExitStatus.DONE));
    assertThat(
        ran.out(),
        allOf(
            containsString("Fri 19 Mar 2027: expected Thu 18 Mar"),
            containsString("+1.0 days, inside."),
            containsString("2 seasons: median error 1.0 days"),
            containsString("Fewer than 10 seasons")));
  }

  @Test
  void asADocument() {
    Ran ran = Ran.withEngine(cycle -> whelped(), lines(2), "accuracy", "--json", "-");
    assertThat(Schemas.againstAccuracy(ran.out()), is(empty()));
    assertThat(ran.out(), containsString("\"few\": true"));
  }

  @Test
  void withoutAWhelpingThereIsNothingToSay() {
    Ran ran = Ran.with(lines(1), "accuracy");
    assertThat(
        ran.out(),
        allOf(
            containsString("No season has a whelping to compare yet."),
            containsString("1 season has no whelping to compare.")));
    assertThat(Schemas.againstAccuracy(Ran.with("", "accuracy", "--json").out()), is(empty()));
  }

  /** The record's own seasons, whose outcome it holds; the answer is the same as of their lines. */
  @Test
  void takesTheSeasonsOfTheRecord() {
    String whelped =
        lines(1).replaceFirst(",\\s*\"observations\"", ", " + OUTCOME + ", \"observations\"");
    String data = directory.toString();
    assertThat(Ran.with(whelped, "import", "--data", data).status(), is(ExitStatus.DONE));
    Ran ofRecord =
        Ran.withEngine(cycle -> whelped(), "", "accuracy", "--record", "--data", data, "--json");
    assertThat(ofRecord.err(), ofRecord.status(), is(ExitStatus.DONE));
    Ran ofLines = Ran.withEngine(cycle -> whelped(), whelped, "accuracy", "--json");
    assertThat(ofRecord.out(), is(ofLines.out()));
    assertThat(ofRecord.out(), containsString("\"errorDays\": 1"));
    Ran nobody = Ran.with("", "accuracy", "--record", "--data", data, "--user", "nobody");
    assertThat(nobody.status(), is(ExitStatus.REFUSED));
    assertThat(nobody.err(), containsString("There is no user \"nobody\"."));
    Ran both = Ran.with("", "accuracy", "--record", "--data", data, "seasons.ndjson");
    assertThat(both.status(), is(ExitStatus.REFUSED));
    assertThat(both.err(), containsString("not both"));
  }

  @Test
  void aBadLineIsNamed() {
    Ran ran = Ran.with(lines(1) + "{\n", "accuracy");
    assertThat(ran.status(), is(ExitStatus.REFUSED));
    assertThat(ran.err(), containsString("line 2"));
  }
}
