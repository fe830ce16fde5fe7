package io.github.tiderule.cases.published;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.startsWith;

import io.github.tiderule.rules.source.Source;
import io.github.tiderule.rules.source.Sources;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Every citation of the project against the list that was checked by hand. */
class CitationsTest {

  private static final Path CHECKED = Path.of("published", "citations.csv");

  /** Keys that stand for no publication. */
  private static final Set<String> NONE =
      Set.of("common-practice", "published-fit", "unit-definition", "working-value");

  private static final Pattern KEY =
      Pattern.compile("\\b[a-z]{3,}(?:-[a-z]+)*-(?:19|20)[0-9]{2}\\b");

  private static final Sources SOURCES = Sources.load();

  private static List<CSVRecord> checked() throws IOException {
    CSVFormat format = CSVFormat.DEFAULT.builder().setHeader().setSkipHeaderRecord(true).get();
    try (CSVParser parser = CSVParser.parse(CHECKED, StandardCharsets.UTF_8, format)) {
      return parser.getRecords();
    }
  }

  @TestFactory
  Stream<DynamicTest> everyCitationSaysWhatWasChecked() throws IOException {
    return checked().stream()
        .map(row -> DynamicTest.dynamicTest(row.get("key"), () -> compare(row)));
  }

  private static void compare(CSVRecord row) {
    Source source = SOURCES.get(row.get("key"));
    String citation = source.citation();
    assertThat(
        citation,
        startsWith(row.get("authors").isEmpty() ? row.get("title") : row.get("authors") + ". "));
    for (String part : List.of("year", "title", "journal", "place")) {
      assertThat(citation, containsString(row.get(part)));
    }
    Matcher doi = Pattern.compile(" doi:(\\S+)$").matcher(citation);
    assertThat(doi.find() ? doi.group(1) : "", equalTo(row.get("doi")));
    assertThat(citation + source.readAs(), not(containsString("approximate")));
  }

  @Test
  void theListHasEverySourceAndNoOther() throws IOException {
    Set<String> listed =
        checked().stream()
            .map(row -> row.get("key"))
            .collect(Collectors.toCollection(TreeSet::new));
    Set<String> cited =
        SOURCES.all().stream()
            .map(Source::key)
            .filter(key -> !NONE.contains(key))
            .collect(Collectors.toCollection(TreeSet::new));
    assertThat(listed, equalTo(cited));
  }

  @Test
  void whateverIsCitedInCodeAndPagesIsListed() throws IOException {
    Set<String> unknown = new TreeSet<>();
    int seen = 0;
    for (String module : List.of("rules", "engine", "api", "cases")) {
      try (Stream<Path> files = Files.walk(Path.of("..", module))) {
        for (Path file : files.filter(CitationsTest::cites).toList()) {
          Matcher key = KEY.matcher(Files.readString(file));
          while (key.find()) {
            seen++;
            if (!SOURCES.contains(key.group())) {
              unknown.add(key.group() + " in " + file);
            }
          }
        }
      }
    }
    assertThat(seen, greaterThan(300));
    assertThat(unknown, empty());
  }

  private static boolean cites(Path file) {
    String path = file.toString();
    return (path.contains("/src/main/") && path.matches(".*\\.(java|drl|csv|properties)"))
        || path.matches("\\.\\./cases/(published|report|rulebook)/.*\\.(csv|md)");
  }
}
