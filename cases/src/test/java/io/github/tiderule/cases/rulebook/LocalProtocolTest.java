package io.github.tiderule.cases.rulebook;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.emptyString;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.not;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.github.tiderule.cases.ProgramRun;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A clinic's own parameters and the question why, through the program. */
class LocalProtocolTest {

  private static final ObjectMapper JSON = new ObjectMapper();
  private static final String GOOD =
      "id,value,reason,by,since\nfindings.rise.floor,1.2,reads low,Dr A (invented),2026-12-01\n";

  @TempDir private Path directory = Path.of("");

  private String protocol(String text) throws IOException {
    return Files.writeString(directory.resolve("clinic.csv"), text).toString();
  }

  private static String cycle() throws IOException {
    return Files.readString(Path.of("demo/chilled-one-dose.json"));
  }

  @Test
  void theAnswerNamesTheProtocolAndWhatItChanges() throws IOException {
    String file = protocol(GOOD);
    ProgramRun run = ProgramRun.of(cycle(), "advise", "--json", "-", "--protocol", file);
    JsonNode overlay = JSON.readTree(run.out()).path("stamp").path("overlay");
    assertThat(overlay.path("name").asText(), is("clinic.csv"));
    JsonNode change = overlay.path("changes").path(0);
    assertThat(change.path("usual").asDouble(), is(1.5));
    assertThat(change.path("local").asDouble(), is(1.2));
    String trace = ProgramRun.of(cycle(), "trace", "-", "--protocol", file).out();
    assertThat(trace, containsString("findings.rise.floor is 1.2 instead of 1.5 ng/mL"));
    assertThat(
        ProgramRun.of("", "rulebook", "--protocol", file).out(), containsString("clinic.csv"));
    assertThat(
        ProgramRun.of(JSON.readTree(cycle()).toString(), "batch", "--protocol", file).out(),
        containsString("\"overlay\""));
  }

  @Test
  void withoutAProtocolTheStampIsAsItWas() throws IOException {
    JsonNode stamp = JSON.readTree(ProgramRun.of(cycle(), "advise", "--json", "-").out());
    assertThat(stamp.path("stamp").size(), is(2));
  }

  @Test
  void aBadProtocolIsRefusedWithAllThatIsWrong() throws IOException {
    String file = protocol(GOOD + "findings.rise.flor,1,,b,2026-12-01\n");
    for (String command : new String[] {"advise", "trace", "batch"}) {
      ProgramRun run = ProgramRun.of(cycle(), command, "-", "--protocol", file);
      assertThat(run.status(), is(2));
      assertThat(run.out(), is(emptyString()));
      assertThat(run.err(), containsString("Maybe findings.rise.floor?"));
      assertThat(run.err(), containsString("/line 3/reason"));
    }
    ProgramRun json = ProgramRun.of(cycle(), "advise", "--json", "-", "--protocol", file);
    assertThat(json.status(), is(2));
    assertThat(JSON.readTree(json.out()).path("problems").size(), is(2));
    assertThat(ProgramRun.of("", "rulebook", "--protocol", "-").status(), is(2));
    assertThat(ProgramRun.of("", "rulebook", "--protocol", file + "x").status(), is(2));
  }

  @Test
  void whyARuleSpokeOrKeptSilentIsToldConditionByCondition() throws IOException {
    String spoke = ProgramRun.of(cycle(), "trace", "-", "--rule", "FND-003").out();
    assertThat(spoke, containsString("IT SPOKE"));
    assertThat(spoke, containsString("met: level at least 1.5 ng/mL [2.56 ng/mL]"));
    assertThat(spoke, not(containsString("not met")));
    String silent = ProgramRun.of(cycle(), "trace", "-", "--rule", "FND-010").out();
    assertThat(silent, containsString("IT KEPT SILENT"));
    assertThat(silent, containsString("not met: level at least 5 ng/mL [2.56 ng/mL]"));
    silent.lines().forEach(line -> assertThat(line, line.length() <= 80, is(true)));
    ProgramRun unknown = ProgramRun.of(cycle(), "trace", "-", "--rule", "FND-0033");
    assertThat(unknown.status(), is(2));
    assertThat(unknown.err(), containsString("maybe FND-003?"));
  }
}
