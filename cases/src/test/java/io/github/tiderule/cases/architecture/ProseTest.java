package io.github.tiderule.cases.architecture;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.not;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaCodeUnit;
import com.tngtech.archunit.core.domain.JavaMethodCall;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * What has been told is not searched, cut or mended. Every place in the rooms that carry what is
 * told at which letters are looked for is listed with what it looks in, in {@code searches.csv};
 * none of them may tell a sentence too.
 */
class ProseTest {

  private static final Set<String> SEARCHES =
      Set.of(
          "split",
          "indexOf",
          "lastIndexOf",
          "contains",
          "startsWith",
          "endsWith",
          "substring",
          "replace",
          "replaceAll",
          "replaceFirst",
          "matches");

  private static final List<String> ROOMS =
      List.of(
          "io.github.tiderule.engine",
          "io.github.tiderule.format.json",
          "io.github.tiderule.api.report",
          "io.github.tiderule.api.picture",
          "io.github.tiderule.api.paper",
          "io.github.tiderule.api.calendar",
          "io.github.tiderule.api.words",
          "io.github.tiderule.api.page",
          "io.github.tiderule.rules.sentence",
          "io.github.tiderule.rules.conclusion");

  private static JavaClasses classes;

  @BeforeAll
  static void read() {
    classes =
        new ClassFileImporter()
            .withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackages(ROOMS);
  }

  private static boolean looksForLetters(JavaMethodCall call) {
    String owner = call.getTargetOwner().getName();
    return (owner.equals("java.lang.String") && SEARCHES.contains(call.getName()))
        || (owner.equals("java.util.regex.Pattern") && call.getName().equals("matcher"));
  }

  private static boolean tells(JavaMethodCall call) {
    String owner = call.getTargetOwner().getSimpleName();
    return (owner.equals("Sentence") && call.getName().equals("toString"))
        || (List.of("Phrasing", "Telling").contains(owner) && call.getName().startsWith("say"));
  }

  private static Stream<JavaCodeUnit> searching() {
    return classes.stream()
        .filter(one -> !one.getPackageName().endsWith("page.html"))
        .flatMap(one -> one.getCodeUnits().stream())
        .filter(
            unit -> unit.getMethodCallsFromSelf().stream().anyMatch(ProseTest::looksForLetters));
  }

  /** {@code Class.method}, of a lambda the method it stands in. */
  private static String name(JavaCodeUnit unit) {
    String method =
        unit.getName().startsWith("lambda$") ? unit.getName().split("\\$", -1)[1] : unit.getName();
    return unit.getOwner().getSimpleName() + "." + method;
  }

  private static Set<String> listed() throws IOException {
    try (InputStream in =
        Objects.requireNonNull(ProseTest.class.getResourceAsStream("searches.csv"))) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .skip(1)
          .map(line -> line.split(",", 2)[0])
          .collect(Collectors.toCollection(TreeSet::new));
    }
  }

  @Test
  void everyPlaceThatLooksForLettersIsListed() throws IOException {
    Set<String> found =
        searching().map(ProseTest::name).collect(Collectors.toCollection(TreeSet::new));
    assertThat(found, is(listed()));
  }

  @Test
  void noneOfThemTellsASentence() {
    assertThat(
        searching()
            .filter(unit -> unit.getMethodCallsFromSelf().stream().anyMatch(ProseTest::tells))
            .map(ProseTest::name)
            .filter(name -> !name.equals("Telling.capital"))
            .toList(),
        is(empty()));
  }

  /** The test sees what it looks for: the page that breaks lines is among what it finds. */
  @Test
  void aKnownPlaceIsSeen() {
    List<String> found = searching().map(ProseTest::name).toList();
    assertThat(found, hasItem("NumberForm.pattern"));
    assertThat(found, not(empty()));
  }
}
