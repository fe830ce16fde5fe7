package io.github.tiderule.cases.launcher;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.startsWith;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import io.github.tiderule.cases.ProgramRun;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The script that starts the program sooner changes nothing but that. */
class LauncherTest {

  private static final Path SCRIPT = Path.of("../api/bin/tiderule");
  private static final Path JAR = Path.of("../api/target/tiderule.jar");
  private static final Path DEMO = Path.of("demo/chilled-one-dose.json");

  private static String run(Map<String, String> environment, String... arguments)
      throws IOException, InterruptedException {
    // without packaging there is no jar to start
    assumeTrue(Files.exists(JAR));
    List<String> command = new ArrayList<>(List.of("/bin/sh", SCRIPT.toString()));
    command.addAll(List.of(arguments));
    ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
    builder.environment().put("JAVA_HOME", System.getProperty("java.home"));
    builder.environment().putAll(environment);
    Process process = builder.start();
    process.getOutputStream().close();
    String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    return "status " + process.waitFor() + "\n" + out;
  }

  private static List<Path> archives(Path cache) throws IOException {
    try (Stream<Path> files = Files.list(cache.resolve("tiderule"))) {
      return files.toList();
    }
  }

  @Test
  void answersTheSameBeforeAndAfterItKeptItsClasses(@TempDir Path cache) throws Exception {
    Map<String, String> environment = Map.of("XDG_CACHE_HOME", cache.toString());
    String expected = "status 0\n" + ProgramRun.of(Files.readString(DEMO), "advise", "-").out();
    assertThat(run(environment, "advise", DEMO.toString()), is(expected));
    List<Path> kept = archives(cache);
    assertThat(kept, hasSize(1));
    assertThat(Files.size(kept.get(0)), greaterThan(1_000_000L));
    Object made = Files.getLastModifiedTime(kept.get(0));
    assertThat(run(environment, "advise", DEMO.toString()), is(expected));
    assertThat(archives(cache), is(kept));
    assertThat(Files.getLastModifiedTime(kept.get(0)), is(made));
  }

  @Test
  void worksWhereNothingCanBeKept() throws Exception {
    assertThat(
        run(Map.of("XDG_CACHE_HOME", "/proc/nowhere"), "advise", DEMO.toString()),
        startsWith("status 0\nBracken (invented), as of "));
  }

  @Test
  void anArchiveThatIsBrokenIsNotUsed(@TempDir Path cache) throws Exception {
    Map<String, String> environment = Map.of("XDG_CACHE_HOME", cache.toString());
    String first = run(environment, "advise", DEMO.toString());
    Path archive = archives(cache).get(0);
    Files.delete(archive);
    Files.writeString(archive, "no archive at all");
    assertThat(run(environment, "advise", DEMO.toString()), containsString(first.substring(9)));
  }

  @Test
  void saysHowToBuildAJarThatIsMissing(@TempDir Path cache) throws Exception {
    assertThat(
        run(
            Map.of(
                "XDG_CACHE_HOME",
                cache.toString(),
                "TIDERULE_JAR",
                cache.resolve("none.jar").toString()),
            "advise"),
        startsWith("status 2\ntiderule: no "));
  }
}
