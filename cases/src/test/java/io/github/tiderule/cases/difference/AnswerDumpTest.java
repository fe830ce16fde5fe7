package io.github.tiderule.cases.difference;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.hasItems;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.not;

import io.github.tiderule.cases.Nightly;
import io.github.tiderule.cases.difference.AnswerDump.Extent;
import io.github.tiderule.cases.difference.program.LoadedProgram;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class AnswerDumpTest {

  @TempDir private Path directory = Path.of("");

  private Path cases = Path.of("");

  @BeforeEach
  void twoDemonstrationsAndARefusedFile() throws IOException {
    cases = directory.resolve("cases");
    Files.createDirectories(cases.resolve("demo"));
    for (String name : new String[] {"chilled-one-dose", "natural-two-matings"}) {
      Path demo = Path.of("demo", name + ".json");
      Files.copy(demo, cases.resolve(demo.toString()));
    }
    Path refused = Files.createDirectories(cases.resolve("files/slips"));
    Files.copy(Path.of("files/0001-typing-slips/cycle.json"), refused.resolve("cycle.json"));
  }

  private SortedMap<String, String> dump(String name, @Nullable Path protocol, Extent extent)
      throws IOException, ReflectiveOperationException {
    Path out = directory.resolve(name);
    AnswerDump.write(LoadedProgram.ofThisBuild(), protocol, out, cases, extent);
    SortedMap<String, String> files = new TreeMap<>();
    try (Stream<Path> walk = Files.walk(out)) {
      for (Path file : walk.filter(Files::isRegularFile).toList()) {
        files.put(out.relativize(file).toString(), Files.readString(file));
      }
    }
    return files;
  }

  private static Set<String> kinds(Iterable<String> files) {
    Set<String> kinds = new TreeSet<>();
    files.forEach(file -> kinds.add(file.substring(0, file.indexOf('/'))));
    return kinds;
  }

  @Test
  void twoDumpsOfOneProgramAreTheSame() throws IOException, ReflectiveOperationException {
    SortedMap<String, String> once = dump("once", null, Extent.SOME);
    assertThat(once.size(), is(greaterThan(500)));
    assertThat(kinds(once.keySet()), hasItems("json", "summary", "why", "refusal", "batch"));
    assertThat(
        once.get("pages/season/demo/chilled-one-dose/reasoning.txt"),
        containsString("The reasoning for Bracken (invented)"));
    assertThat(once.get("advise/files/slips.txt"), containsString("is refused, with 3 problems"));
    assertThat(
        once.get("sheet/demo/natural-two-matings.txt"), containsString("Breeding-day plan for"));
    // sheets and pages a second time by night
    SortedMap<String, String> again =
        dump("again", null, Nightly.is() ? Extent.SOME : Extent.FILES);
    SortedMap<String, String> same = new TreeMap<>(once);
    same.keySet().removeIf(file -> !Nightly.is() && !again.containsKey(file));
    assertThat(same.size(), is(greaterThan(Nightly.is() ? 500 : 15)));
    assertThat(again.keySet(), is(same.keySet()));
    assertThat(differing(same, again), is(empty()));
  }

  @Test
  void aChangedParameterShowsInEachAnswerThatRestsOnIt()
      throws IOException, ReflectiveOperationException {
    Path protocol =
        Files.writeString(
            directory.resolve("clinic.csv"),
            "id,value,reason,by,since\nfindings.rise.floor,1.2,to be seen,a test,2027-01-01\n");
    Set<String> differing =
        differing(dump("usual", null, Extent.FILES), dump("local", protocol, Extent.FILES));
    assertThat(
        differing, hasItems("json/demo/chilled-one-dose.json", "trace/demo/chilled-one-dose.txt"));
    assertThat(differing.toString(), not(containsString("files/slips")));
  }

  private static Set<String> differing(
      SortedMap<String, String> one, SortedMap<String, String> other) {
    return one.entrySet().stream()
        .filter(file -> !file.getValue().equals(other.get(file.getKey())))
        .map(file -> file.getKey())
        .collect(Collectors.toCollection(TreeSet::new));
  }

  @Test
  void whatIsNewEveryRunIsMasked() {
    Masked masked = new Masked(LocalDate.of(2027, 3, 1));
    assertThat(
        Masked.text("rules 90a6338c1b80. Rules sha256:" + "0f".repeat(32)),
        is("rules …. Rules sha256:…"));
    assertThat(
        masked.page(
            "Entered Mon 1 Mar 2027, 08:00 by 01kb9xv2d6xk3d2c5f7gq4n8mz of /assets/0a1b2c/x"),
        is("Entered … by … of /assets/…/x"));
    assertThat(masked.page("On Wed 3 Mar 2027, 08:00"), is("On Wed 3 Mar 2027, 08:00"));
    assertThat(masked.page("DTSTAMP:20270228T230000Z 2027-02-28T23:00:00Z"), is("DTSTAMP:… …"));
  }

  @Test
  void aPageIsItsWords() {
    assertThat(
        PageText.of(
                "<html><style>p {}</style><h1>A &lt; B</h1><p>She is <b>in</b>\n season"
                    + "<input type=\"hidden\" value=\"x\"><img alt=\"her curve\"></p></html>")
            .lines()
            .toList(),
        contains("A < B", "She is in", "season", "[alt: her curve]"));
  }
}
