package io.github.tiderule.api.words;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.hasItems;
import static org.hamcrest.Matchers.hasSize;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What was struck from told texts stays struck. */
class StruckWordsTest {

  private static final Path STYLE = Path.of("../sheet/told-texts.md");

  /** The list at the end of the style page. */
  private static List<String> struck() throws IOException {
    String style = Files.readString(STYLE);
    return style
        .substring(style.indexOf("## Struck"))
        .lines()
        .filter(line -> line.startsWith("- "))
        .map(line -> line.substring(2, line.indexOf(':')).toLowerCase(Locale.ROOT))
        .toList();
  }

  private static List<String> found(Texts texts, List<String> struck) {
    List<String> found = new ArrayList<>();
    for (String key : texts.keys()) {
      String said = texts.say(key).toLowerCase(Locale.ROOT);
      struck.stream().filter(said::contains).forEach(words -> found.add(key + ": " + words));
    }
    return found;
  }

  @Test
  void noTextHasWordsThatWereStruck() throws IOException {
    List<String> struck = struck();
    assertThat(struck, hasItems("foretold", "what became of", "fewer than under"));
    assertThat(found(Texts.ofPages(Locale.ROOT), struck), empty());
    assertThat(found(Texts.ofReports(), struck), empty());
  }

  /** What the rules themselves tell, as the copy of the rule book has it. */
  @Test
  void noRuleTellsThem() throws IOException {
    List<String> struck = struck();
    List<String> found = new ArrayList<>();
    Path rules = Path.of("../../rules/src/main/resources/io/github/tiderule/rulebase");
    List<Path> files;
    try (Stream<Path> all = Files.walk(rules)) {
      files = all.filter(Files::isRegularFile).toList();
    }
    assertThat(files, hasSize(greaterThan(40)));
    for (Path file : files) {
      Files.readAllLines(file).stream()
          .filter(line -> line.contains("say.that(") || line.contains("@title"))
          .map(line -> line.toLowerCase(Locale.ROOT))
          .forEach(
              line ->
                  struck.stream()
                      .filter(line::contains)
                      .forEach(words -> found.add(file.getFileName() + ": " + words)));
    }
    assertThat(found, empty());
  }

  @Test
  void theCheckWouldFindThem() {
    assertThat(found(Texts.ofPages(Locale.ROOT), List.of("not known")), hasSize(greaterThan(1)));
  }
}
