package io.github.tiderule.cases.readme;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.startsWith;

import io.github.tiderule.cases.ProgramRun;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** What README shows is what the program prints. */
class ReadmeTest {

  @Test
  void theReportInReadmeIsTheProgramsOwn() throws IOException {
    String readme = Files.readString(Path.of("../README.md"));
    String begin = "<!-- begin chilled-one-dose -->\n```text\n";
    int from = readme.indexOf(begin) + begin.length();
    String shown = readme.substring(from, readme.indexOf("```\n<!-- end chilled-one-dose -->"));
    assertThat(shown.lines().count(), greaterThan(8L));
    String cycle = Files.readString(Path.of("demo/chilled-one-dose.json"));
    assertThat(ProgramRun.of(cycle, "advise", "-").out(), startsWith(shown));
  }
}
