package io.github.tiderule.api.command;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.emptyString;
import static org.hamcrest.Matchers.is;

import io.github.tiderule.api.command.stream.ExitStatus;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.format.Documents;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LaboratoryCommandTest {

  private static final String TABLE =
      "Drawn;Result;Unit\n05.01.2027 08:30;0,4;ng/mL\n06.01.2027 08:30;0,9;\nsoon;1;ng/mL\n";

  @TempDir private Path directory = Path.of("");

  private Ran run(String table, String columns, String... more) throws IOException {
    Path file = Files.writeString(directory.resolve("table.csv"), table);
    return ran(file, columns, more);
  }

  private Ran ran(Path file, String columns, String... more) {
    return Ran.with(
        "",
        Stream.concat(
                Stream.of(
                    "laboratory",
                    file.toString(),
                    "--columns",
                    columns,
                    "--into",
                    directory.resolve("cycle.json").toString()),
                Stream.of(more))
            .toArray(String[]::new));
  }

  @Test
  void savesOnlyWhenTold() throws IOException {
    Path cycle = Files.writeString(directory.resolve("cycle.json"), Documents.fullCycle());
    CycleRecord before = Documents.read(Documents.fullCycle());
    Ran preview = run(TABLE, "at=Drawn,value=Result,unit=Unit");
    assertThat(preview.status(), is(ExitStatus.SOME_REFUSED));
    assertThat(
        preview.out(), containsString("line 2: new, 2027-01-05T08:30:00+01:00, 0.4 ng/mL\n"));
    assertThat(
        preview.out(), containsString("line 3: new, 2027-01-06T08:30:00+01:00, 0.9, its unit"));
    assertThat(preview.out(), containsString("line 4: refused: the date is \"soon\""));
    assertThat(preview.err(), containsString("2 new, 0 duplicate, 1 refused. Nothing is saved"));
    assertThat(Files.readString(cycle), is(Documents.fullCycle()));

    Set<PosixFilePermission> open = PosixFilePermissions.fromString("rw-r--r--");
    Files.setPosixFilePermissions(cycle, open);
    Ran saved = run(TABLE, "at=Drawn,value=Result,unit=Unit", "--save");
    assertThat(saved.err(), saved.status(), is(ExitStatus.SOME_REFUSED));
    assertThat(Files.getPosixFilePermissions(cycle), is(open));
    CycleRecord after = Documents.read(Files.readString(cycle));
    assertThat(after.observations().size(), is(before.observations().size() + 2));
    assertThat(after.observations().containsAll(before.observations()), is(true));
    assertThat(after.semenPlan(), is(before.semenPlan()));
    try (Stream<Path> files = Files.list(directory)) {
      assertThat(files.count(), is(2L));
    }

    String once = Files.readString(cycle);
    Ran again = run(TABLE, "at=Drawn,value=Result,unit=Unit", "--save");
    assertThat(again.err(), containsString("0 new, 2 duplicate, 1 refused. There is nothing"));
    assertThat(Files.readString(cycle), is(once));
    assertThat(preview.engines() + saved.engines(), is(0));
  }

  @Test
  void refusesFilesThatAreNone() throws IOException {
    Files.writeString(directory.resolve("cycle.json"), Documents.fullCycle());
    Path latin = Files.write(directory.resolve("latin.csv"), new byte[] {'D', (byte) 0xE4, '\n'});
    Ran bytes = ran(latin, "at=Drawn,value=Result");
    assertThat(bytes.status(), is(ExitStatus.REFUSED));
    assertThat(bytes.err(), containsString("(not-utf8)"));
    Ran empty = run("", "at=Drawn,value=Result");
    assertThat(empty.status(), is(ExitStatus.REFUSED));
    assertThat(empty.err(), containsString("(empty-file)"));
    assertThat(empty.out(), is(emptyString()));
    Ran columns = run(TABLE, "when=Drawn", "--save");
    assertThat(columns.status(), is(ExitStatus.REFUSED));
    assertThat(columns.err(), containsString("columns has \"when=Drawn\""));
    Files.writeString(directory.resolve("cycle.json"), "{}");
    assertThat(run(TABLE, "at=Drawn,value=Result").err(), containsString("cycle.json is refused"));
    assertThat(
        Ran.with("", List.of("laboratory", "x.csv").toArray(String[]::new)).status(),
        is(ExitStatus.REFUSED));
  }
}
