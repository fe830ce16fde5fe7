package io.github.tiderule.cases.rulebook;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.is;

import io.github.tiderule.cases.ProgramRun;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** The copy of the rule book shows a reviewer what a change alters; it must be the latest. */
class RulebookCopyTest {

  private static final String REMAKE =
      "The rule book has changed. Look the change over, then make the copy again, from the top"
          + " directory: mvn -q -DskipTests package && java -jar api/target/tiderule.jar rulebook"
          + " > cases/rulebook/rulebook.md";

  @Test
  void theCopyIsWhatTheProgramPrints() throws IOException {
    String copy = Files.readString(Path.of("rulebook/rulebook.md"));
    assertThat(REMAKE, copy, is(ProgramRun.of("", "rulebook").out()));
  }
}
