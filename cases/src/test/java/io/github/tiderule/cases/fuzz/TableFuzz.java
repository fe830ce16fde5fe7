package io.github.tiderule.cases.fuzz;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.is;

import com.code_intelligence.jazzer.junit.DictionaryFile;
import com.code_intelligence.jazzer.junit.FuzzTest;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.format.cycle.CycleFile;
import io.github.tiderule.format.cycle.Reading;
import io.github.tiderule.format.laboratory.Columns;
import io.github.tiderule.format.laboratory.LaboratoryFile;
import io.github.tiderule.format.laboratory.Line;
import io.github.tiderule.format.laboratory.PreviewReport;
import io.github.tiderule.format.node.Node;
import io.github.tiderule.format.node.NodeText;
import io.github.tiderule.format.problem.Pointer;
import io.github.tiderule.format.problem.Problems;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Any text as a laboratory's table, below a first line that says its columns: results that a cycle
 * file can hold, or a reason for every line that is not taken.
 */
class TableFuzz {

  private static final String BEFORE =
      "{\"schema\": \"tiderule/cycle/1\", \"asOf\": \"2027-01-12T18:30:00+01:00\","
          + " \"zone\": \"Europe/Vienna\", \"female\": {\"id\": \"juniper\", \"name\": \"Juniper\"},"
          + " \"firstBlood\": {\"on\": \"2027-01-03\", \"certainty\": \"seen\"},"
          + " \"observations\": [";
  private static final String KNOWN =
      "{\"id\": \"p1\", \"kind\": \"progesterone\", \"at\": \"2027-01-08T08:00:00+01:00\","
          + " \"value\": 0.8, \"unit\": \"ng/mL\", \"method\": \"clia\", \"laboratory\": \"A\"}";
  private static final CycleRecord CYCLE = cycle(KNOWN);

  @DictionaryFile(resourcePath = "table.dict")
  @FuzzTest(maxDuration = Fuzzing.MOST)
  void read(byte[] file) {
    String text = new String(file, StandardCharsets.UTF_8);
    int end = text.indexOf('\n');
    Problems problems = new Problems();
    List<Line> lines =
        Columns.read(end < 0 ? text : text.substring(0, end), Pointer.ROOT, problems)
            .flatMap(
                columns ->
                    LaboratoryFile.preview(
                        end < 0 ? "" : text.substring(end + 1),
                        columns,
                        CYCLE,
                        Set.of(),
                        Pointer.ROOT,
                        problems))
            .orElse(null);
    if (lines == null) {
      Shown.refusal(problems.all());
      return;
    }
    assertThat(problems.all(), is(List.of()));
    for (Line line : lines) {
      assertThat(line.toString(), line.number() > 1);
      assertThat(
          line.toString(), line.observation() != null, is(line.outcome() == Line.Outcome.NEW));
      assertThat(line.toString(), line.message().isEmpty(), is(line.observation() != null));
    }
    Shown.text(PreviewReport.text(lines));
    Sound.advice(Sound.ENGINE, withAll(LaboratoryFile.added(lines)));
  }

  /** What was said to be new makes, with what was known, a file that is read. */
  private static CycleRecord withAll(List<Node.Members> added) {
    return cycle(
        KNOWN + added.stream().map(one -> ", " + NodeText.of(one)).collect(Collectors.joining()));
  }

  private static CycleRecord cycle(String observations) {
    Reading reading =
        CycleFile.read((BEFORE + observations + "]}").getBytes(StandardCharsets.UTF_8));
    if (reading instanceof Reading.Read read) {
      return read.cycle();
    }
    throw new AssertionError(reading + " of " + observations);
  }
}
