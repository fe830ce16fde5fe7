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
class ClinicArrowsTest {

  private static final JavaClasses OURS =
      new ClassFileImporter().importPath(Path.of("target/classes"));

  /** It knows what is kept, who asks and what they see, and no command line. */
  @Test
  void itKnowsNoCommandLine() {
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
            "io.github.tiderule.api.record..",
            "io.github.tiderule.api.access..",
            "io.github.tiderule.api.service..",
            "io.github.tiderule.api.page..",
            "io.javalin..",
            "org.eclipse.jetty..",
            "jakarta.servlet..",
            "io.prometheus.metrics..",
            "org.snakeyaml.engine..",
            "org.jdbi..",
            "org.flywaydb..",
            "com.zaxxer.hikari..",
            "com.password4j..",
            "gg.jte..",
            "javax.sql..",
            "org.jspecify.annotations..",
            "java..")
        .check(OURS);
  }

  @Test
  void itsPackagesMakeNoCircle() {
    slices().matching("io.github.tiderule.api.(**)").should().beFreeOfCycles().check(OURS);
  }
}
