package io.github.tiderule.api.command;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.emptyString;
import static org.hamcrest.Matchers.is;

import io.github.tiderule.api.command.stream.ExitStatus;
import io.github.tiderule.format.Documents;
import io.github.tiderule.format.json.Schemas;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code stud} about its files, options and output; the engine's answer is a given one. */
class StudCommandTest {

  private static final String SERVICES = "2027-01-14T10:00+01:00, 2027-01-15T10:00+01:00";

  @TempDir private Path directory = Path.of("");

  private String file(String name, String content) throws IOException {
    return Files.writeString(directory.resolve(name), content).toString();
  }

  private static String other() {
    return Documents.fullCycle("\"id\": \"juniper\"", "\"id\": \"hazel\"");
  }

  private static String line(String document) {
    return document.replace("\n", " ");
  }

  @Test
  void asksAboutEveryFemale() throws IOException {
    Ran ran =
        Ran.with(
            "",
            "stud",
            file("a.json", Documents.fullCycle()),
            file("b.json", other()),
            "--services",
            SERVICES);
    assertThat(ran.err(), is(emptyString()));
    assertThat(ran.status(), is(ExitStatus.DONE));
    assertThat(ran.asked().size(), is(2));
    assertThat(
        ran.out(),
        allOf(
            containsString("juniper. Without it she would miss 90 in 100 of her"),
            containsString("goes to another she loses 25 in 100."),
            containsString("hazel: See a vet first.")));
  }

  @Test
  void readsFemalesOneALine() throws IOException {
    String lines = line(Documents.fullCycle()) + "\n\n" + line(other()) + "\n";
    Ran ran = Ran.with(lines, "stud", "--lines", "-", "--services", SERVICES);
    assertThat(ran.status(), is(ExitStatus.DONE));
    assertThat(ran.asked().size(), is(2));
  }

  @Test
  void theDocumentFollowsItsSchema() {
    Ran ran = Ran.with(Documents.fullCycle(), "stud", "--json", "-", "--services", SERVICES);
    assertThat(ran.status(), is(ExitStatus.DONE));
    assertThat(Schemas.againstStud(ran.out()), is(empty()));
  }

  @Test
  void refusesWhatItCannotUse() throws IOException {
    String fine = file("a.json", Documents.fullCycle());
    String nothing = file("empty.json", "");
    assertRefused(Ran.with("", "stud", fine), "--services");
    assertRefused(Ran.with("", "stud", "--services", SERVICES), "Which females? Name a FILE");
    assertRefused(Ran.with("", "stud", fine, "--services", "Thursday"), "is \"Thursday\"");
    assertRefused(Ran.with("", "stud", fine, "--services", ""), "is \"\"");
    assertRefused(Ran.with("", "stud", fine, fine, "--services", SERVICES), "given twice");
    assertRefused(Ran.with("", "stud", nothing, "--services", SERVICES), "(empty-file)");
    assertRefused(
        Ran.with("", "stud", "--lines", nothing, "--services", SERVICES), "There is no female");
    assertRefused(
        Ran.with("", "stud", "--lines", file("b.ndjson", "{}\n"), "--services", SERVICES),
        "line 1 of");
    String many = String.join(",", java.util.Collections.nCopies(13, "2027-01-14T10:00+01:00"));
    assertRefused(Ran.with("", "stud", fine, "--services", many), "from 1 to 12 moments");
  }

  private static void assertRefused(Ran ran, String words) {
    assertThat(ran.status(), is(ExitStatus.REFUSED));
    assertThat(ran.out(), is(emptyString()));
    assertThat(ran.err().replaceAll("\\s+", " "), containsString(words));
  }
}
