package io.github.tiderule.api.command;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.not;

import io.github.tiderule.api.command.stream.ExitStatus;
import io.github.tiderule.engine.CycleRecord;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A season is kept from the terminal by her name, and nobody writes JSON. */
class FemaleCommandsTest {

  private static final ZoneId VIENNA = ZoneId.of("Europe/Vienna");

  @TempDir private Path directory = Path.of("");

  private Ran run(String input, String... arguments) {
    List<String> all = new ArrayList<>(List.of(arguments));
    all.add("--data");
    all.add(directory.resolve("record").toString());
    return Ran.with(input, all.toArray(String[]::new));
  }

  private Ran done(String... arguments) {
    Ran ran = run("", arguments);
    assertThat(ran.err(), ran.status(), is(ExitStatus.DONE));
    return ran;
  }

  private String refused(String... arguments) {
    Ran ran = run("", arguments);
    assertThat(ran.out() + ran.err(), ran.status(), is(ExitStatus.REFUSED));
    return ran.err();
  }

  private static String day(int ago) {
    return LocalDate.now(VIENNA).minusDays(ago).toString();
  }

  private void begin(String name) {
    done("begin", name, "--new", "--on", day(9), "--zone", "Europe/Vienna");
  }

  @Test
  void fromTheFirstDayToThePlan() {
    begin("Juniper");
    Ran ran =
        done(
            "enter",
            "juniper",
            "4,6",
            "ng/ml",
            "--at",
            day(1) + " 08:00",
            "--method",
            "clia",
            "--laboratory",
            "A");
    assertThat(ran.asked(), hasSize(1));
    CycleRecord asked = ran.asked().get(0);
    assertThat(asked.female().name(), is("Juniper"));
    assertThat(asked.zone(), is(VIENNA));
    String exported = done("export").out();
    assertThat(exported, containsString("\"value\":4.6"));
    assertThat(exported, containsString("\"unit\":\"ng/mL\""));
    assertThat(exported, containsString("\"method\":\"clia\""));
    assertThat(exported, containsString("\"certainty\":\"seen\""));
    Ran plan = done("plan", "Juniper");
    assertThat(plan.out(), is(ran.out()));
    assertThat(done("plan", "Juniper", "--json").out(), containsString("tiderule/advice/1"));
    assertThat(done("plan", "Juniper", "--full").out().length() > plan.out().length(), is(true));
  }

  @Test
  void otherResultsAreEnteredByTheirWords() {
    begin("Juniper");
    done("enter", "Juniper", "lh", "positive", "--at", day(1) + "T08:00");
    done("enter", "Juniper", "smear", "80", "--at", day(1) + "T08:00");
    done("enter", "Juniper", "sign", "stands", "--at", day(1) + "T08:00");
    done("enter", "Juniper", "8.4", "?", "--at", day(1) + "T08:00");
    String exported = done("export").out();
    assertThat(exported, containsString("\"result\":\"positive\""));
    assertThat(exported, containsString("\"cornifiedPercent\":80"));
    assertThat(exported, containsString("\"sign\":\"stands\""));
    assertThat(exported, containsString("\"value\":8.4"));
    assertThat(exported, not(containsString("\"unit\"")));
    assertThat(refused("enter", "Juniper", "8.4"), containsString("unit"));
    assertThat(refused("enter", "Juniper", "heat"), containsString("no result \"heat\""));
    assertThat(
        refused("enter", "Juniper", "2", "ng/mL", "--at", "2999-01-01T08:00"),
        not(containsString("fault of ours")));
    assertThat(done("export").out(), is(exported));
  }

  @Test
  void aSlipInHerNameBeginsNothing() {
    begin("Juniper");
    assertThat(refused("begin", "Junper", "--on", day(2)), containsString("maybe Juniper?"));
    assertThat(refused("plan", "Hazel"), containsString("There is no female Hazel"));
    assertThat(refused("begin", "Juniper", "--new"), containsString("already"));
    assertThat(refused("begin", "Juniper", "--on", "3 January"), containsString("3 January"));
    done("begin", "Juniper");
    assertThat(done("export").out().lines().toList(), hasSize(2));
    done("begin", "Hazel", "--new", "--on", day(3), "--estimated");
    assertThat(done("export").out(), containsString("\"certainty\":\"estimated\""));
  }

  @Test
  void aRecordWithUsersIsToldWhose() {
    Ran added = run("one of three red kites\n", "users", "add", "anna", "--role", "keeper");
    assertThat(added.err(), added.status(), is(ExitStatus.DONE));
    assertThat(refused("begin", "Juniper", "--new"), containsString("--user"));
    done("begin", "Juniper", "--new", "--on", day(9), "--user", "anna");
    done("plan", "Juniper", "--user", "anna");
    Ran other = run("one of three red kites\n", "users", "add", "carl", "--role", "keeper");
    assertThat(other.err(), other.status(), is(ExitStatus.DONE));
    assertThat(refused("plan", "Juniper", "--user", "carl"), containsString("no female Juniper"));
  }

  @Test
  void aLaboratorysTableGoesIntoHerSeason() throws IOException {
    begin("Juniper");
    Path table = directory.resolve("table.csv");
    Files.writeString(table, "Drawn,Result,Unit\n" + day(2) + "T08:00+01:00,2.1,ng/mL\n");
    String[] command = {
      "laboratory",
      table.toString(),
      "--columns",
      "at=Drawn,value=Result,unit=Unit",
      "--record",
      "--into",
      "Juniper"
    };
    Ran preview = done(command);
    assertThat(preview.err(), containsString("Nothing is saved"));
    assertThat(done("export").out(), not(containsString("2.1")));
    List<String> saved = new ArrayList<>(List.of(command));
    saved.add("--save");
    assertThat(
        done(saved.toArray(String[]::new)).err(), containsString("in the record of Juniper"));
    assertThat(done("export").out(), containsString("\"value\":2.1"));
    assertThat(
        done(saved.toArray(String[]::new)).err(), containsString("There is nothing to save."));
    String bundle = done("fhir", "export", "Juniper", "--record").out();
    assertThat(bundle, containsString("\"Bundle\""));
    Path file = directory.resolve("bundle.json");
    Files.writeString(file, bundle);
    begin("Hazel");
    Ran taken =
        done(
            "fhir",
            "import",
            file.toString(),
            "--record",
            "--into",
            "Hazel",
            "--subject",
            "Juniper",
            "--save");
    assertThat(taken.err(), containsString("in the record of Hazel"));
    assertThat(
        done("export").out().lines().filter(line -> line.contains("\"value\":2.1")).toList(),
        hasSize(2));
  }

  @Test
  void oneStudIsSharedAmongFemalesOfTheRecord() {
    begin("Juniper");
    begin("Hazel");
    Ran ran =
        done("stud", "--record", "Juniper", "Hazel", "--services", "2027-03-11T10:00:00+01:00");
    assertThat(
        ran.asked().stream().map(cycle -> cycle.female().name()).toList(),
        is(List.of("Juniper", "Hazel")));
    assertThat(
        refused(
            "stud", "--record", "Juniper", "Juniper", "--services", "2027-03-11T10:00:00+01:00"),
        containsString("named twice"));
  }
}
