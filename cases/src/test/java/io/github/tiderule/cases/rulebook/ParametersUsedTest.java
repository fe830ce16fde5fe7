package io.github.tiderule.cases.rulebook;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.is;

import io.github.tiderule.rules.Chapter;
import io.github.tiderule.rules.RuleBase;
import io.github.tiderule.rules.parameter.Parameter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** No parameter of the engine stands in the files without being asked for. */
class ParametersUsedTest {

  private static final RuleBase RULES = RuleBase.load();

  private static String engine() throws IOException {
    try (Stream<Path> walk = Files.walk(Path.of("../engine/src/main/java"))) {
      StringBuilder text = new StringBuilder();
      for (Path file : walk.filter(path -> path.toString().endsWith(".java")).toList()) {
        text.append(Files.readString(file));
      }
      return text.toString();
    }
  }

  /** The parameters that a text names neither in full nor without their scope. */
  private static List<String> unused(List<String> ids, String text) {
    return ids.stream()
        .filter(id -> !text.contains('"' + id + '"'))
        .filter(id -> !text.contains('"' + id.substring(id.indexOf('.') + 1) + '"'))
        .toList();
  }

  @Test
  void everyParameterOfTheEngineIsAskedFor() throws IOException {
    List<String> stages = Arrays.stream(Chapter.values()).map(Chapter::word).toList();
    List<String> ids =
        RULES.parameters().all().stream()
            .filter(parameter -> !stages.contains(parameter.scope()))
            .map(Parameter::id)
            .collect(Collectors.toList());
    assertThat(ids.size(), is(greaterThan(50)));
    assertThat(unused(ids, engine()), is(empty()));
  }

  @Test
  void oneThatNobodyAsksForIsFound() throws IOException {
    assertThat(
        unused(List.of("whelping.sd", "whelping.forgotten"), engine()),
        contains("whelping.forgotten"));
  }
}
