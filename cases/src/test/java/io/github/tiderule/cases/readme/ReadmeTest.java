package io.github.tiderule.cases.readme;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.lessThanOrEqualTo;
import static org.hamcrest.Matchers.startsWith;

import io.github.tiderule.cases.ProgramRun;
import java.io.IOException;
import java.lang.reflect.Method;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.tools.JavaCompiler;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What README shows is what the program prints. */
class ReadmeTest {

  private static final String IMPORTS =
      """
      import io.github.tiderule.engine.*;
      import io.github.tiderule.rules.fact.*;
      import io.github.tiderule.rules.fact.assay.*;
      import io.github.tiderule.rules.fact.observation.*;
      import io.github.tiderule.rules.fact.semen.*;
      import java.time.*;
      import java.util.List;
      """;

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

  @Test
  void theJavaInReadmeIsTenLinesAndRuns(@TempDir Path directory) throws Exception {
    String readme = Files.readString(Path.of("../README.md"));
    String begin = "```java\n";
    int from = readme.indexOf(begin) + begin.length();
    String shown = readme.substring(from, readme.indexOf("```", from));
    assertThat(shown.lines().count(), lessThanOrEqualTo(10L));
    Path source = directory.resolve("Shown.java");
    Files.writeString(
        source, IMPORTS + "class Shown { static String headline() {\n" + shown + "}}");
    JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
    String path = System.getProperty("java.class.path");
    int status =
        compiler.run(
            null,
            null,
            null,
            "-proc:none",
            "-cp",
            path,
            "-d",
            directory.toString(),
            source.toString());
    assertThat(status, is(0));
    URL[] here = {directory.toUri().toURL()};
    try (URLClassLoader loader = new URLClassLoader(here, getClass().getClassLoader())) {
      Method method = loader.loadClass("Shown").getDeclaredMethod("headline");
      method.setAccessible(true);
      String headline = (String) method.invoke(null);
      assertThat(readme, containsString("`" + headline + "`"));
    }
  }
}
