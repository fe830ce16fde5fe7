package io.github.tiderule.cases.difference;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.greaterThanOrEqualTo;
import static org.hamcrest.Matchers.is;

import io.github.tiderule.cases.ProgramRun;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class AdviceDifferenceTest {

  @TempDir private Path directory = Path.of("");

  private static Tree advice(String... more) throws IOException {
    String cycle = Files.readString(Path.of("demo/chilled-one-dose.json"));
    String[] arguments = new String[more.length + 3];
    arguments[0] = "advise";
    arguments[1] = "--json";
    arguments[2] = "-";
    System.arraycopy(more, 0, arguments, 3, more.length);
    ProgramRun run = ProgramRun.of(cycle, arguments);
    assertThat(run.err(), run.status(), is(0));
    return Tree.of(run.out());
  }

  @Test
  void theSameRulesMakeNoDifference() throws IOException {
    assertThat(Changes.between(advice(), advice()), is(empty()));
  }

  @Test
  void aMovedThresholdShowsInTheRulesThatFired() throws IOException {
    Path protocol =
        Files.writeString(
            directory.resolve("clinic.csv"),
            "id,value,reason,by,since\nfindings.base.left,3,to be seen,a test,2027-01-01\n");
    List<String> changes =
        Changes.between(advice(), advice("--protocol", protocol.toString())).stream()
            .filter(change -> change.startsWith("rules fired"))
            .toList();
    assertThat(changes.toString(), changes.size(), is(1));
  }

  @Test
  void eachKindOfChangeHasItsLine() throws IOException {
    Tree before =
        Tree.of(
            "{'action': {'now': 'test'}, 'plan': {'at': ['2027-01-01T08:00:00+01:00']},"
                    .replace('\'', '"')
                + "'ovulation': {'median': 'a'}, 'questions': [], 'trace': [{'rule': 'X-1'}]}"
                    .replace('\'', '"'));
    Tree after =
        Tree.of(
            "{'action': {'now': 'book'}, 'plan': null, 'ovulation': {'median': 'b'},"
                    .replace('\'', '"')
                + "'questions': [{'about': 'p1', 'text': 'why'}], 'trace': []}".replace('\'', '"'));
    assertThat(
        Changes.between(before, after),
        contains(
            "action: test -> book",
            "plan: [2027-01-01T08:00:00+01:00] -> nothing",
            "ovulation median: a -> b",
            "questions: nothing -> p1 why",
            "rules fired: X-1 -> nothing"));
  }

  @Test
  void aSideIsAJarWithOrWithoutAProtocol() {
    assertThat(Side.of("a/b.jar"), is(new Side(Path.of("a/b.jar"), null)));
    assertThat(Side.of("a/b.jar+c/d.csv"), is(new Side(Path.of("a/b.jar"), Path.of("c/d.csv"))));
  }

  @Test
  void casesAreCycleFilesOnly() throws IOException {
    assertThat(AdviceDifference.cycles(Path.of("demo")).size(), is(greaterThanOrEqualTo(6)));
    assertThat(AdviceDifference.cycles(Path.of("report")).size(), is(0));
  }
}
