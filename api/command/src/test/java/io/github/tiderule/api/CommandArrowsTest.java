package io.github.tiderule.api;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import java.nio.file.Path;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;

/** What this module may use; the first of its tests. */
@Order(1)
class CommandArrowsTest {

  private static final JavaClasses OURS =
      new ClassFileImporter().importPath(Path.of("target/classes"));

  /** What pages, paper and the record are made with stays behind them. */
  @Test
  void itKnowsTheOtherDoorsAndItsParserAlone() {
    classes()
        .should()
        .onlyDependOnClassesThat()
        .resideInAnyPackage(
            "io.github.tiderule.format..",
            "io.github.tiderule.engine..",
            "io.github.tiderule.rules..",
            "io.github.tiderule.api..",
            "picocli..",
            "org.jspecify.annotations..",
            "java..")
        .check(OURS);
  }

  @Test
  void itsPackagesMakeNoCircle() {
    slices().matching("io.github.tiderule.api.(**)").should().beFreeOfCycles().check(OURS);
  }
}
