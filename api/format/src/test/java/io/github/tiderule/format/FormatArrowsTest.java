package io.github.tiderule.format;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import java.nio.file.Path;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;

/** What this module may use; the first of its tests. */
@Order(1)
class FormatArrowsTest {

  private static final JavaClasses OURS =
      new ClassFileImporter().importPath(Path.of("target/classes"));

  /** Whoever takes the library for its JSON gets nothing else with it. */
  @Test
  void itNeedsTheEngineAndAParserAlone() {
    classes()
        .should()
        .onlyDependOnClassesThat()
        .resideInAnyPackage(
            "io.github.tiderule.format..",
            "io.github.tiderule.engine..",
            "io.github.tiderule.rules..",
            "com.fasterxml.jackson.core..",
            "org.apache.commons.csv..",
            "org.jspecify.annotations..",
            "java..")
        .check(OURS);
  }

  @Test
  void itsPackagesMakeNoCircle() {
    slices().matching("io.github.tiderule.format.(**)").should().beFreeOfCycles().check(OURS);
  }
}
