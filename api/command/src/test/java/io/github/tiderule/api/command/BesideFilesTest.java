package io.github.tiderule.api.command;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.startsWith;

import io.github.tiderule.api.command.stream.ExitStatus;
import io.github.tiderule.format.SampleAdvice;
import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BesideFilesTest {

  private static final String DEMO = "../../cases/demo/mixed-laboratories.json";

  @TempDir Path directory;

  private String file(String name) {
    return directory.resolve(name).toString();
  }

  private String start(String name) throws IOException {
    byte[] bytes = Files.readAllBytes(directory.resolve(name));
    return new String(bytes, 0, Math.min(bytes.length, 60), StandardCharsets.ISO_8859_1);
  }

  @Test
  void writesEachFileAndPrintsThePlanAsEver() throws IOException {
    Ran plain = Ran.with("", "advise", DEMO);
    Ran ran =
        Ran.with(
            "",
            "advise",
            DEMO,
            "--curve",
            file("c.svg"),
            "--sheet",
            file("s.PDF"),
            "--paper",
            "letter");
    assertThat(ran.err(), is(""));
    assertThat(ran.status(), is(ExitStatus.DONE));
    assertThat(ran.out(), is(plain.out()));
    assertThat(start("c.svg"), startsWith("<?xml"));
    assertThat(start("s.PDF"), startsWith("%PDF-"));
    Ran png = Ran.with("", "advise", DEMO, "--json", "--curve", file("c.png"));
    assertThat(png.status(), is(ExitStatus.DONE));
    assertThat(png.out(), startsWith("{"));
    assertThat(start("c.png").substring(1), startsWith("PNG"));
    Ran summary = Ran.with("", "trace", DEMO, "--summary", file("v.pdf"));
    assertThat(summary.status(), is(ExitStatus.DONE));
    assertThat(start("v.pdf"), startsWith("%PDF-"));
  }

  @Test
  void theDayOfInseminationIsAFileOfItsOwn() throws IOException {
    Ran ran = Ran.with("", "advise", DEMO, "--day-sheet", file("d.pdf"));
    assertThat(ran.err(), is(""));
    assertThat(ran.status(), is(ExitStatus.DONE));
    assertThat(start("d.pdf"), startsWith("%PDF-"));
    Ran none =
        Ran.withEngine(
            cycle -> SampleAdvice.empty(),
            "",
            "advise",
            DEMO,
            "--sheet",
            file("s.pdf"),
            "--day-sheet",
            file("n.pdf"));
    assertThat(none.status(), is(ExitStatus.REFUSED));
    assertThat(none.err(), containsString("there is no sheet for the day of insemination"));
    assertThat(none.out(), is(""));
    assertThat(Files.exists(directory.resolve("s.pdf")), is(false));
    assertThat(Files.exists(directory.resolve("n.pdf")), is(false));
  }

  @Test
  void refusesWhatItCannotWriteBeforeItPrints() {
    Ran kind = Ran.with("", "advise", DEMO, "--curve", file("c.gif"));
    assertThat(kind.status(), is(ExitStatus.REFUSED));
    assertThat(kind.err(), containsString("it ends with .svg or .png."));
    assertThat(kind.engines(), is(0));
    Ran nowhere = Ran.with("", "advise", DEMO, "--curve", file("none/c.svg"));
    assertThat(nowhere.status(), is(ExitStatus.REFUSED));
    assertThat(nowhere.err(), containsString("cannot be written"));
    assertThat(nowhere.out(), is(""));
    Ran paper = Ran.with("", "trace", DEMO, "--summary", file("v.pdf"), "--paper", "a5");
    assertThat(paper.status(), is(ExitStatus.REFUSED));
    assertThat(paper.err(), containsString("it can be a4 or letter."));
    assertThat(Ran.with("", "advise", DEMO, "--sheet", ".pdf").status(), is(ExitStatus.REFUSED));
  }

  @Test
  void aRefusedCycleWritesNothing() {
    Ran ran = Ran.with("{", "advise", "-", "--curve", file("c.svg"));
    assertThat(ran.status(), is(ExitStatus.REFUSED));
    assertThat(Files.exists(directory.resolve("c.svg")), is(false));
  }

  /** A run without picture or paper is short: it loads nothing of them. */
  @Test
  void aPlainRunLoadsNothingOfThem() throws IOException, InterruptedException {
    List<String> command =
        List.of(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-Xlog:class+load:stdout",
            "-cp",
            System.getProperty("java.class.path"),
            "io.github.tiderule.api.Main",
            "advise",
            DEMO);
    File out = directory.resolve("loaded.txt").toFile();
    Process process =
        new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(out).start();
    assertThat(process.waitFor(), is(0));
    String loaded = Files.readString(out.toPath());
    assertThat(loaded.length(), greaterThan(100_000));
    for (String name :
        List.of(
            "io.github.tiderule.api.picture",
            "io.github.tiderule.api.paper",
            "io.github.tiderule.api.command.Papers",
            "org.apache.batik",
            "com.openhtmltopdf",
            "org.apache.pdfbox",
            "java.awt")) {
      assertThat(loaded, not(containsString(name)));
    }
  }
}
