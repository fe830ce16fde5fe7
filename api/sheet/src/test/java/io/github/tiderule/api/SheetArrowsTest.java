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
class SheetArrowsTest {

  private static final JavaClasses OURS =
      new ClassFileImporter().importPath(Path.of("target/classes"));

  /** No record, no people, no door: an answer comes in, and something to read goes out. */
  @Test
  void itKnowsAnswersAndPaperAlone() {
    classes()
        .should()
        .onlyDependOnClassesThat()
        .resideInAnyPackage(
            "io.github.tiderule.format..",
            "io.github.tiderule.engine..",
            "io.github.tiderule.rules..",
            "io.github.tiderule.api.words..",
            "io.github.tiderule.api.report..",
            "io.github.tiderule.api.picture..",
            "io.github.tiderule.api.paper..",
            "io.github.tiderule.api.calendar..",
            "biweekly..",
            "com.github.mangstadt.vinnie..",
            "io.nayuki.qrcodegen..",
            "org.apache.batik..",
            "com.openhtmltopdf..",
            "org.apache.pdfbox..",
            "org.apache.fontbox..",
            "org.jspecify.annotations..",
            "java..")
        .check(OURS);
  }

  @Test
  void itsPackagesMakeNoCircle() {
    slices().matching("io.github.tiderule.api.(**)").should().beFreeOfCycles().check(OURS);
  }
}
