package io.github.tiderule.api;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.anEmptyMap;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.not;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIf;

/** Holds {@code dependencies.md} to what the build resolves for the runnable jar. */
class DependencyListTest {

  private static final Path LIST = Path.of("../dependencies.md");
  private static final Path TREE = Path.of("target/runtime-dependencies.txt");
  private static final Path BILL = Path.of("../target/tiderule.cdx.json");
  private static final String OURS = "io.github.tiderule:";
  private static final int INDENT = 3;

  /** A row of a table: what it is, its licence, and why it is there or what brings it. */
  private record Row(String library, String licence, String why) {}

  @Test
  void namesWhatWeDependOn() throws IOException {
    Map<String, String> resolved = resolved();
    resolved.values().removeIf(with -> !with.isEmpty());
    assertThat(libraries("## What we depend on").keySet(), is(resolved.keySet()));
  }

  @Test
  void saysWhyWeDependOnIt() throws IOException {
    assertThat(
        rows("## What we depend on").stream().filter(row -> row.why().isBlank()).toList(),
        is(empty()));
  }

  @Test
  void namesWhatComesWithIt() throws IOException {
    Map<String, String> resolved = resolved();
    resolved.values().removeIf(String::isEmpty);
    assertThat(libraries("## What comes with it"), is(resolved));
  }

  /** What only compiles rules, and the like, comes back by whatever way a library finds. */
  @Test
  void nothingKeptOutIsThere() throws IOException {
    List<Row> keptOut = rows("## What is kept out, and why");
    assertThat(keptOut, is(not(empty())));
    assertThat(keptOut.stream().filter(row -> row.why().isBlank()).toList(), is(empty()));
    Set<String> resolved = resolved().keySet();
    assertThat(
        keptOut.stream()
            .map(Row::library)
            .filter(name -> resolved.stream().anyMatch(library -> isMeant(name, library)))
            .toList(),
        is(empty()));
  }

  /** Whether a name that may end in {@code *} stands for a library. */
  private static boolean isMeant(String name, String library) {
    return name.endsWith("*")
        ? library.startsWith(name.substring(0, name.length() - 1))
        : library.equals(name);
  }

  static boolean billWasMade() {
    return Files.exists(BILL);
  }

  /** With the profile that makes the bill of materials, so always in CI. */
  @Test
  @EnabledIf("billWasMade")
  void namesTheirLicences() throws IOException {
    Map<String, String> billed = new TreeMap<>();
    for (JsonNode component : new ObjectMapper().readTree(BILL.toFile()).get("components")) {
      String library = component.get("group").asText() + ":" + component.get("name").asText();
      if (!library.startsWith(OURS)) {
        billed.put(library, licences(component));
      }
    }
    Map<String, String> listed = new TreeMap<>();
    rows("## What we depend on").forEach(row -> listed.put(row.library(), row.licence()));
    rows("## What comes with it").forEach(row -> listed.put(row.library(), row.licence()));
    assertThat(listed, is(billed));
  }

  private static String licences(JsonNode component) {
    List<String> licences = new ArrayList<>();
    for (JsonNode entry : component.path("licenses")) {
      JsonNode licence = entry.path("license");
      licences.add(
          licence
              .path("id")
              .asText(licence.path("name").asText(entry.path("expression").asText())));
    }
    return String.join(" or ", licences);
  }

  /** Every library of the runnable jar, with the one of ours that brings it; empty for ours. */
  private static Map<String, String> resolved() throws IOException {
    Map<String, String> brought = new TreeMap<>();
    List<String> above = new ArrayList<>();
    for (String line : Files.readAllLines(TREE)) {
      String[] parts = line.strip().split(":", -1);
      String library = parts[0] + ":" + parts[1];
      int depth = (line.length() - line.stripLeading().length()) / INDENT;
      above.subList(depth, above.size()).clear();
      if (!library.startsWith(OURS)) {
        String with = above.stream().filter(up -> !up.startsWith(OURS)).findFirst().orElse("");
        brought.put(library, with);
      }
      above.add(library);
    }
    assertThat("no dependencies in " + TREE, brought, is(not(anEmptyMap())));
    return brought;
  }

  private static Map<String, String> libraries(String heading) throws IOException {
    Map<String, String> libraries = new TreeMap<>();
    rows(heading).forEach(row -> libraries.put(row.library(), row.why()));
    return libraries;
  }

  /** Rows of the first table below a heading. */
  private static List<Row> rows(String heading) throws IOException {
    List<String> lines = Files.readAllLines(LIST);
    return lines.subList(lines.indexOf(heading) + 1, lines.size()).stream()
        .dropWhile(line -> !line.startsWith("|"))
        .takeWhile(line -> line.startsWith("|"))
        .skip(2)
        .map(line -> line.split("\\|", -1))
        .map(cells -> new Row(cells[1].strip(), cells[2].strip(), cells[3].strip()))
        .toList();
  }
}
