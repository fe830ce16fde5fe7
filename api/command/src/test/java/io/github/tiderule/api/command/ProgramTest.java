package io.github.tiderule.api.command;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.emptyString;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.startsWith;

import io.github.tiderule.api.command.stream.ExitStatus;
import io.github.tiderule.format.Documents;
import io.github.tiderule.format.SampleAdvice;
import io.github.tiderule.format.json.AdviceJson;
import io.github.tiderule.format.json.Layout;
import io.github.tiderule.format.json.Schemas;
import io.github.tiderule.format.node.Characters;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ProgramTest {

  @TempDir private Path directory = Path.of("");

  private String file(String content) throws IOException {
    return Files.writeString(directory.resolve("cycle.json"), content).toString();
  }

  @Test
  void advisePrintsTheFirstScreen() throws IOException {
    Ran ran = Ran.with("", "advise", file(Documents.fullCycle()));
    assertThat(ran.status(), is(ExitStatus.DONE));
    assertThat(ran.out(), startsWith("Juniper, as of "));
    assertThat(ran.out(), containsString("08:00–12:00"));
    assertThat(ran.out(), containsString("--full"));
    assertThat(ran.err(), is(emptyString()));
  }

  @Test
  void adviseInFullPrintsEverything() throws IOException {
    Ran ran = Ran.with("", "advise", "--full", file(Documents.fullCycle()));
    assertThat(ran.status(), is(ExitStatus.DONE));
    assertThat(ran.out(), startsWith("Breeding-day plan for Juniper\n"));
    assertThat(ran.out(), containsString("DAYS, BEST FIRST"));
    assertThat(ran.err(), is(emptyString()));
  }

  @Test
  void adviseReadsTheStandardInput() {
    Ran ran = Ran.with(Documents.fullCycle(), "advise", "-");
    assertThat(ran.status(), is(ExitStatus.DONE));
    assertThat(ran.out(), startsWith("Juniper, as of "));
  }

  @Test
  void advisePrintsJsonOnDemand() {
    Ran ran = Ran.with(Documents.fullCycle(), "advise", "--json", "-");
    assertThat(ran.status(), is(ExitStatus.DONE));
    assertThat(ran.out(), is(AdviceJson.text(SampleAdvice.full(), Layout.INDENTED)));
  }

  @Test
  void adviseTakesAnotherMoment() {
    Ran ran =
        Ran.with(Documents.fullCycle(), "advise", "-", "--as-of", "2027-01-10T07:00:00+01:00");
    assertThat(ran.status(), is(ExitStatus.DONE));
    assertThat(ran.asked().get(0).asOf().toString(), is("2027-01-10T06:00:00Z"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"", "tomorrow", "2027-01-10", "2027-01-10T07:00:00", "9999-01-01T00:00:00Z"})
  void adviseRefusesAMomentItCannotRead(String moment) {
    Ran ran = Ran.with(Documents.fullCycle(), "advise", "-", "--as-of=" + moment);
    assertThat(ran.status(), is(ExitStatus.REFUSED));
    assertThat(ran.err(), containsString("write it like 2027-01-12T18:30:00+01:00"));
    assertThat(ran.asked(), is(List.of()));
  }

  @Test
  void aRefusedFileIsListedForPeople() throws IOException {
    String file = file(Documents.fullCycle("\"value\": 2.1", "\"value\": -3"));
    for (String command : List.of("advise", "trace", "calendar")) {
      Ran ran = Ran.with("", command, file);
      assertThat(ran.status(), is(ExitStatus.REFUSED));
      assertThat(ran.out(), is(emptyString()));
      assertThat(ran.err(), containsString("/observations/0/value\n  value is -3, below zero"));
      assertThat(ran.engines(), is(0));
    }
  }

  @Test
  void aRefusedFileIsADocumentForPrograms() {
    Ran ran = Ran.with("", "advise", "-", "--json");
    assertThat(ran.status(), is(ExitStatus.REFUSED));
    assertThat(ran.out(), containsString("\"code\": \"empty-file\""));
    assertThat(Schemas.againstProblems(ran.out()), is(List.of()));
    assertThat(ran.err(), is(emptyString()));
  }

  @Test
  void aFileThatCannotBeOpenedIsNamed() {
    for (String command : List.of("advise", "trace", "batch")) {
      Ran missing = Ran.with("", command, directory.resolve("none.json").toString());
      assertThat(missing.status(), is(ExitStatus.REFUSED));
      assertThat(missing.err(), startsWith("There is no file "));
      Ran folder = Ran.with("", command, directory.toString());
      assertThat(folder.status(), is(ExitStatus.REFUSED));
      assertThat(folder.err(), containsString("is a directory, not a file."));
      assertThat(Ran.with("", command, "a\0b").status(), is(ExitStatus.REFUSED));
    }
  }

  @Test
  void traceCitesInFull() {
    Ran ran = Ran.with(Documents.fullCycle(), "trace", "-");
    assertThat(ran.status(), is(ExitStatus.DONE));
    assertThat(ran.out(), containsString("P4-021 First rise"));
    assertThat(ran.out(), containsString("Read as: abstract"));
  }

  @Test
  void calendarPrintsTheDates() {
    Ran ran = Ran.with(Documents.fullCycle(), "calendar", "-");
    assertThat(ran.err(), ran.status(), is(ExitStatus.DONE));
    assertThat(ran.out(), startsWith("BEGIN:VCALENDAR\r\n"));
    assertThat(ran.out(), containsString("SUMMARY:Juniper: breed\r\n"));
    assertThat(ran.out(), containsString("SEQUENCE:0\r\n"));
    assertThat(Ran.with(Documents.fullCycle(), "calendar", "-").out(), is(ran.out()));
  }

  @Test
  void rulebookComesInFourFormats() {
    assertThat(Ran.with("", "rulebook").out(), startsWith("# Rule book"));
    assertThat(Ran.with("", "rulebook", "--format", "html").out(), startsWith("<!doctype html>"));
    assertThat(Ran.with("", "rulebook", "--format", "json").out(), startsWith("{\n  \"schema\""));
    assertThat(Ran.with("", "rulebook", "--format", "text").out(), startsWith("Rule book\n"));
    Ran unknown = Ran.with("", "rulebook", "--format", "pdf");
    assertThat(unknown.status(), is(ExitStatus.REFUSED));
    assertThat(unknown.err(), containsString("it can be markdown, html, json, text."));
  }

  @Test
  void badUsageSaysWhatIsKnown() {
    for (String[] arguments :
        new String[][] {
          {},
          {"tell"},
          {"serve", "--port", "x"},
          {"backup"},
          {"users"},
          {"advise"},
          {"advise", "a", "b"},
          {"advise", "--fast", "a"}
        }) {
      Ran ran = Ran.with("", arguments);
      assertThat(String.join(" ", arguments), ran.status(), is(ExitStatus.REFUSED));
      assertThat(ran.out(), is(emptyString()));
      assertThat(ran.err(), is(not(emptyString())));
      assertThat(ran.err(), not(containsString("\u001b")));
    }
  }

  /** Names of files and of fields come from elsewhere, and are shown in a terminal. */
  @Test
  void nothingGivenActsOnATerminal() {
    String acts = "\u001b[31m\u202Ex\u0007";
    String shown = "<U+001B>[31m<U+202E>x<U+0007>";
    Ran missing = Ran.with("", "advise", "no" + acts + ".json");
    assertThat(missing.status(), is(ExitStatus.REFUSED));
    assertThat(missing.err(), containsString("no" + shown));
    String file = "{\"\\u001b[31m\\u202Ex\\u0007\": 1, \"schema\": \"\\u202E\"}";
    Ran refused = Ran.with(file, "advise", "-");
    assertThat(refused.err(), containsString(shown));
    Ran json = Ran.with(file, "advise", "--json", "-");
    assertThat(json.out(), containsString("\\u001B[31m\\u202Ex\\u0007"));
    Ran option = Ran.with("", "advise", "--fast" + acts);
    Ran command = Ran.with("", "tell" + acts);
    for (Ran ran : List.of(missing, refused, json, option, command)) {
      for (String text : List.of(ran.out(), ran.err())) {
        assertThat(Characters.visible(text), is(text));
      }
    }
  }

  @Test
  void helpAndVersionCostNoEngine() {
    Ran help = Ran.with("", "--help");
    assertThat(help.status(), is(ExitStatus.DONE));
    assertThat(help.out(), containsString("rulebook"));
    for (String command :
        List.of(
            "advise",
            "calendar",
            "laboratory",
            "serve",
            "backup",
            "restore",
            "export",
            "import",
            "users")) {
      assertThat(help.out(), containsString(command));
    }
    assertThat(Ran.with("", "serve", "--help").out(), containsString("--behind-tls"));
    assertThat(Ran.with("", "batch", "--help").out(), containsString("one a line"));
    Ran version = Ran.with("", "--version");
    assertThat(version.out().strip().matches("tiderule \\d+\\.\\d+\\.\\d+"), is(true));
    assertThat(help.engines() + version.engines(), is(0));
  }

  @Test
  void aFaultOfOursIsOneLine() {
    Ran ran =
        Ran.withEngine(
            cycle -> {
              throw new IllegalStateException("no\nway");
            },
            Documents.fullCycle(),
            "advise",
            "-");
    assertThat(ran.status(), is(ExitStatus.FAULT));
    assertThat(
        ran.err(), is("A fault of ours: IllegalStateException: no way. Please report it.\n"));
    assertThat(ran.out(), is(emptyString()));
  }

  @Test
  void aReaderWhoLeavesIsNoFaultButAFullDiskIs() {
    assertThat(Ran.intoBroken("Broken pipe", "rulebook").status(), is(ExitStatus.DONE));
    assertThat(Ran.intoBroken("Broken pipe", "rulebook").err(), is(emptyString()));
    Ran full = Ran.intoBroken("No space left on device", "rulebook");
    assertThat(full.status(), is(ExitStatus.FAULT));
    assertThat(
        full.err(), is("Reading or writing failed: IOException: No space left on device.\n"));
  }
}
