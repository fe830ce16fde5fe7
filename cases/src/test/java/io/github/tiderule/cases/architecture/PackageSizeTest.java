package io.github.tiderule.cases.architecture;

import static java.util.stream.Collectors.counting;
import static java.util.stream.Collectors.groupingBy;
import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.hasKey;
import static org.hamcrest.Matchers.is;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/** A package holds no more than somebody can look over. */
@AnalyzeClasses(
    packages = "io.github.tiderule",
    importOptions = ImportOption.DoNotIncludeTests.class)
class PackageSizeTest {

  private static final int MOST = 20;

  /** Packages still to be split. One that has been must be taken off, or the test fails. */
  private static final Set<String> LARGE =
      Set.of(
          "io.github.tiderule.engine",
          "io.github.tiderule.engine.advice",
          "io.github.tiderule.engine.timeline",
          "io.github.tiderule.rules.conclusion",
          "io.github.tiderule.rules.condition",
          "io.github.tiderule.rules.fact");

  /** Compiled rules and templates: nobody writes or reads them as classes. */
  private static boolean isWritten(JavaClass one) {
    String name = one.getPackageName();
    return !name.startsWith("io.github.tiderule.rulebase")
        && !name.equals("io.github.tiderule.api.page.html")
        && !one.getSimpleName().equals("package-info");
  }

  @ArchTest
  static void noPackageHoldsMoreThanTwentyClasses(JavaClasses classes) {
    Map<String, Long> sizes =
        classes.stream()
            .filter(one -> one.isTopLevelClass() && isWritten(one))
            .collect(groupingBy(JavaClass::getPackageName, counting()));
    assertThat(sizes, hasKey("io.github.tiderule.api.service"));
    Set<String> found = new TreeSet<>();
    sizes.forEach(
        (name, size) -> {
          if (size > MOST) {
            found.add(name);
          }
        });
    assertThat("sizes " + sizes, found, is(new TreeSet<>(LARGE)));
  }
}
