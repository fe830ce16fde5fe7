package io.github.tiderule.api.command;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.emptyString;
import static org.hamcrest.Matchers.is;

import io.github.tiderule.api.command.stream.ExitStatus;
import io.github.tiderule.format.Documents;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RecordCommandsTest {

  private static final String PASSWORD = "one of three red kites\n";

  @TempDir private Path directory = Path.of("");

  private String data(String name) {
    return directory.resolve(name).toString();
  }

  private static String line() {
    return Documents.fullCycle().replace("\n", " ") + "\n";
  }

  @Test
  void whatIsImportedIsExportedAndBackedUpAndRestored() {
    Ran taken = Ran.with(line() + "\n{}\n", "import", "--data", data("one"));
    assertThat(taken.err(), taken.status(), is(ExitStatus.SOME_REFUSED));
    assertThat(taken.err(), containsString("line 3"));
    assertThat(taken.err(), containsString("1 taken in, 0 there already, 1 refused."));
    Ran again = Ran.with(line(), "import", "--data", data("one"), "-");
    assertThat(again.status(), is(ExitStatus.DONE));
    assertThat(again.err(), containsString("0 taken in, 1 there already"));
    Ran exported = Ran.with("", "export", "--data", data("one"));
    assertThat(exported.status(), is(ExitStatus.DONE));
    Documents.read(exported.out());
    String file = data("backup.db");
    assertThat(Ran.with("", "backup", "--data", data("one"), file).status(), is(ExitStatus.DONE));
    Ran twice = Ran.with("", "backup", "--data", data("one"), file);
    assertThat(twice.status(), is(ExitStatus.REFUSED));
    assertThat(twice.err(), containsString("overwrites nothing"));
    assertThat(Ran.with("", "restore", "--data", data("two"), file).status(), is(ExitStatus.DONE));
    assertThat(Ran.with("", "export", "--data", data("two")).out(), is(exported.out()));
    Ran full = Ran.with("", "restore", "--data", data("two"), file);
    assertThat(full.status(), is(ExitStatus.REFUSED));
    assertThat(full.err(), containsString("not empty"));
  }

  @Test
  void usersAreAddedListedAndClosed() {
    Ran.with(line(), "import", "--data", data("one"));
    Ran added =
        Ran.with(
            PASSWORD,
            "users",
            "--data",
            data("one"),
            "add",
            "anna",
            "--role",
            "keeper",
            "--takes-over");
    assertThat(added.err(), added.status(), is(ExitStatus.DONE));
    assertThat(added.err(), containsString("1 females from before"));
    assertThat(
        Ran.with(PASSWORD, "users", "--data", data("one"), "add", "anna", "--role", "vet").status(),
        is(ExitStatus.REFUSED));
    assertThat(
        Ran.with("short\n", "users", "--data", data("one"), "add", "b", "--role", "vet").err(),
        containsString("12 to 200 characters"));
    assertThat(
        Ran.with(PASSWORD, "users", "--data", data("one"), "add", "b").err(),
        containsString("keeper, vet or reader"));
    Ran.with("", "users", "--data", data("one"), "close", "anna");
    assertThat(
        Ran.with("", "users", "--data", data("one"), "list").out(), is("anna\tkeeper\tclosed\n"));
    assertThat(
        Ran.with("", "users", "--data", data("one"), "open", "carl").err(),
        containsString("There is no user \"carl\"."));
    assertThat(Ran.with(line(), "import", "--data", data("one")).err(), containsString("--user"));
    assertThat(
        Ran.with(line(), "import", "--data", data("one"), "--user", "anna").err(),
        containsString("1 there already"));
  }

  @Test
  void whatTheRecordSaysOtherwiseIsToldAndStays() {
    Ran.with(line(), "import", "--data", data("one"));
    String before = Ran.with("", "export", "--data", data("one")).out();
    String other = line().replaceFirst("Whippet", "Saluki").replace("Vienna", "Paris");
    assertThat(other.equals(line()), is(false));
    Ran ran = Ran.with(line() + other, "import", "--data", data("one"));
    assertThat(ran.status(), is(ExitStatus.DONE));
    assertThat(
        ran.err(),
        is(
            "line 2: the record does not say the same at /female/breed, /zone, and stays as it"
                + " is.\n0 taken in, 2 there already, 0 refused.\n"));
    assertThat(Ran.with("", "export", "--data", data("one")).out(), is(before));
  }

  @Test
  void aRecordThatCannotBeOpenedIsNamed() throws Exception {
    Files.createDirectories(directory.resolve("broken"));
    Files.writeString(directory.resolve("broken/tiderule.db"), "not a record at all, ".repeat(99));
    Ran ran = Ran.with("", "export", "--data", data("broken"));
    assertThat(ran.status(), is(ExitStatus.REFUSED));
    assertThat(ran.err(), containsString("cannot be opened"));
    assertThat(ran.out(), is(emptyString()));
    Ran other = Ran.with("", "export", "--data", "jdbc:h2:mem:x");
    assertThat(other.status(), is(ExitStatus.REFUSED));
  }

  @Test
  void aBackupThatIsRefusedLeavesNoRecordBehind() throws Exception {
    Path empty = Files.createFile(directory.resolve("empty.db"));
    Ran ran = Ran.with("", "restore", "--data", data("two"), empty.toString());
    assertThat(ran.err(), ran.status(), is(ExitStatus.REFUSED));
    assertThat(ran.err(), containsString("is no backup"));
    assertThat(Files.exists(directory.resolve("two")), is(false));
  }

  @Test
  void whereThereIsNoRecordNothingIsGivenOut() {
    for (String command : new String[] {"backup", "export"}) {
      String file = data("backup.db");
      Ran ran =
          command.equals("backup")
              ? Ran.with("", command, "--data", data("none"), file)
              : Ran.with("", command, "--data", data("none"));
      assertThat(ran.err(), ran.status(), is(ExitStatus.REFUSED));
      assertThat(ran.err(), containsString("There is no record"));
      assertThat(Files.exists(directory.resolve("none")), is(false));
    }
  }

  @Test
  void othersAreNotServedWithoutUsers() {
    Ran ran = Ran.with("", "serve", "--data", data("one"), "--bind", "0.0.0.0");
    assertThat(ran.status(), is(ExitStatus.REFUSED));
    assertThat(ran.err(), containsString("users add"));
    Ran behind = Ran.with("", "serve", "--data", data("one"), "--behind-tls", "--port", "0");
    assertThat(behind.status(), is(ExitStatus.REFUSED));
    assertThat(behind.err(), containsString("users add"));
    assertThat(behind.err(), containsString("twice"));
    assertThat(
        Ran.with("", "serve", "--data", data("one"), "--port", "70000").status(),
        is(ExitStatus.REFUSED));
  }
}
