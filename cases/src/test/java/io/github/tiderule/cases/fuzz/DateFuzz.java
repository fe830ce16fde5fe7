package io.github.tiderule.cases.fuzz;

import com.code_intelligence.jazzer.junit.DictionaryFile;
import com.code_intelligence.jazzer.junit.FuzzTest;
import io.github.tiderule.format.cycle.CycleFile;
import io.github.tiderule.format.cycle.Reading;
import io.github.tiderule.format.node.Node;
import io.github.tiderule.format.node.NodeText;
import io.github.tiderule.format.problem.Problem;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Any lines as the dates and times of a season. What a refusal says may have been meant is itself
 * read as a date.
 */
class DateFuzz {

  /** Where each line stands. */
  private static final List<String> PLACES =
      List.of(
          "/asOf",
          "/zone",
          "/firstBlood/on",
          "/female/bornOn",
          "/observations/0/at",
          "/observations/1/at",
          "/breeding/order/cutOff",
          "/breeding/order/holidays/0",
          "/breeding/available/0/from",
          "/breeding/available/0/to");

  /** What stands there when nothing is said. */
  private static final List<String> USUAL =
      List.of(
          "2027-01-12T18:30:00+01:00",
          "Europe/Vienna",
          "2027-01-03",
          "2023-05-01",
          "2027-01-08T08:00:00+01:00",
          "2027-01-11T08:00:00+01:00",
          "16:30",
          "2027-01-14",
          "2027-01-13T08:00:00+01:00",
          "2027-01-20T20:00:00+01:00");

  private static final String FILE =
      """
      {"schema": "tiderule/cycle/1", "asOf": %s, "zone": %s,
       "firstBlood": {"on": %s, "certainty": "seen"}, "female": {"bornOn": %s},
       "observations": [
         {"id": "p1", "kind": "progesterone", "at": %s, "value": 0.8, "unit": "ng/mL"},
         {"id": "p2", "kind": "progesterone", "at": %s, "value": 2.6, "unit": "ng/mL"}],
       "breeding": {"semen": "chilled", "route": "vaginal", "doses": 2,
         "order": {"cutOff": %s, "transitHours": 20, "holidays": [%s]},
         "available": [{"from": %s, "to": %s}]}}
      """;

  private static final Pattern MEANT = Pattern.compile("Maybe ([0-9].*)\\?");

  @DictionaryFile(resourcePath = "date.dict")
  @FuzzTest(maxDuration = Fuzzing.MOST)
  void read(byte[] file) {
    String[] lines = new String(file, StandardCharsets.UTF_8).split("\n", USUAL.size());
    Reading reading = season(lines);
    if (reading instanceof Reading.Refused refused) {
      Shown.refusal(refused.problems());
      refused.problems().forEach(problem -> meant(problem, lines));
    } else if (reading instanceof Reading.Read read) {
      Sound.advice(Sound.ENGINE, read.cycle());
    }
  }

  /** What a hint says, put in its place, is not refused for its form again. */
  private static void meant(Problem problem, String[] lines) {
    Matcher matcher = MEANT.matcher(problem.hint());
    int line = PLACES.indexOf(problem.path());
    if (line < 0 || line >= lines.length || !matcher.matches()) {
      return;
    }
    String[] mended = lines.clone();
    mended[line] = matcher.group(1);
    if (season(mended) instanceof Reading.Refused again) {
      for (Problem other : again.problems()) {
        if (other.path().equals(problem.path()) && other.code() == problem.code()) {
          throw new AssertionError(problem + ", and then " + other);
        }
      }
    }
  }

  private static Reading season(String[] lines) {
    Object[] said = new Object[USUAL.size()];
    for (int i = 0; i < said.length; i++) {
      said[i] = NodeText.of(new Node.Text(i < lines.length ? lines[i] : USUAL.get(i)));
    }
    return CycleFile.read(FILE.formatted(said).getBytes(StandardCharsets.UTF_8));
  }
}
