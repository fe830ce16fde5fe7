package io.github.tiderule.cases.screen;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.lessThanOrEqualTo;

import io.github.tiderule.api.report.FirstScreen;
import io.github.tiderule.api.report.text.Columns;
import io.github.tiderule.api.report.text.Telling;
import io.github.tiderule.cases.Nightly;
import io.github.tiderule.cases.corpus.CaseFolder;
import io.github.tiderule.cases.corpus.Corpus;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.Tiderule;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.format.cycle.CycleFile;
import io.github.tiderule.format.cycle.Reading;
import io.github.tiderule.rules.conclusion.care.CautionLevel;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The answer stands on one screen of a terminal, over the demonstrations and the corpus. */
class FirstScreenTest {

  /** Of a hundred cases of the corpus at most so many need more: those with much that is grave. */
  private static final int MOST_LONGER = 5;

  private static final Tiderule ENGINE = Tiderule.create();
  private static List<Told> demonstrations = List.of();
  private static List<Told> corpus = List.of();

  private record Told(String name, CycleRecord cycle, Advice advice, String screen) {

    static @Nullable Told of(String name, byte[] file) {
      if (!(CycleFile.read(file) instanceof Reading.Read read)) {
        return null;
      }
      Advice advice = ENGINE.advise(read.cycle());
      return new Told(name, read.cycle(), advice, FirstScreen.text(read.cycle(), advice));
    }

    int lines() {
      return (int) screen.lines().count();
    }

    String said() {
      return String.join(" ", screen.split("\\s+"));
    }
  }

  @BeforeAll
  static void ask() throws IOException {
    Path here = Path.of("").toAbsolutePath();
    List<CaseFolder> cases = Corpus.under(here);
    int every = Nightly.of(3, 1);
    corpus =
        IntStream.range(0, cases.size())
            .filter(i -> i % every == 0)
            .mapToObj(cases::get)
            .parallel()
            .map(folder -> Told.of(folder.name(), folder.cycle()))
            .filter(Objects::nonNull)
            .toList();
    try (Stream<Path> files = Files.list(here.resolve("demo"))) {
      for (Path file : files.filter(one -> one.toString().endsWith(".json")).sorted().toList()) {
        Told told = Told.of(file.toString(), Files.readAllBytes(file));
        demonstrations = append(demonstrations, Objects.requireNonNull(told, file.toString()));
      }
    }
    assertThat(demonstrations.size(), greaterThan(5));
    assertThat(corpus.size(), greaterThan(400 / every));
  }

  private static List<Told> append(List<Told> list, Told one) {
    return Stream.concat(list.stream(), Stream.of(one)).toList();
  }

  private static List<String> longer(List<Told> told) {
    return told.stream()
        .filter(one -> one.lines() > FirstScreen.LINES)
        .map(one -> one.name() + ": " + one.lines() + " lines\n" + one.screen())
        .toList();
  }

  @Test
  void everyDemonstrationFitsOneScreen() {
    assertThat(longer(demonstrations), empty());
  }

  @Test
  void nearlyEveryCaseFitsOneScreen() {
    List<String> longer = longer(corpus);
    assertThat(
        String.join("\n", longer),
        longer.size(),
        lessThanOrEqualTo(corpus.size() * MOST_LONGER / 100));
  }

  @Test
  void noLineIsWiderThanEightyColumns() {
    for (Told one : corpus) {
      one.screen()
          .lines()
          .forEach(line -> assertThat(line, Columns.of(line), lessThanOrEqualTo(80)));
    }
  }

  @Test
  void whatToDoAndWhatIsGraveStandThereInFull() {
    for (Told one : corpus) {
      Telling telling = Telling.onTerminal(one.cycle());
      assertThat(
          one.name(), one.said(), containsString(telling.say(one.advice().action().headline())));
      one.advice().cautions().stream()
          .filter(caution -> caution.level() != CautionLevel.CARE)
          .forEach(
              caution ->
                  assertThat(one.name(), one.said(), containsString(telling.say(caution.text()))));
    }
  }
}
