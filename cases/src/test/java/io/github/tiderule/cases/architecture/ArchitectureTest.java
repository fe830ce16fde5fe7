package io.github.tiderule.cases.architecture;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideOutsideOfPackages;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.util.stream.Stream;

/**
 * The arrows: api to engine to rules, and nothing back; and in api, command to clinic to sheet to
 * format.
 */
@AnalyzeClasses(
    packages = "io.github.tiderule",
    importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {

  private static final String RULES = "io.github.tiderule.rules..";
  private static final String COMPILED_RULES = "io.github.tiderule.rulebase..";
  private static final String ENGINE = "io.github.tiderule.engine..";
  private static final String FORMAT = "io.github.tiderule.format..";
  private static final String API = "io.github.tiderule.api..";
  private static final String CASES = "io.github.tiderule.cases..";

  @ArchTest
  static final ArchRule RULES_KNOW_NOBODY =
      noClasses()
          .that()
          .resideInAnyPackage(RULES, COMPILED_RULES)
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage(ENGINE, FORMAT, API, CASES);

  @ArchTest
  static final ArchRule ENGINE_KNOWS_RULES_ONLY =
      noClasses()
          .that()
          .resideInAPackage(ENGINE)
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage(FORMAT, API, CASES, COMPILED_RULES);

  @ArchTest
  static final ArchRule NOBODY_BUT_CASES_KNOWS_CASES =
      noClasses()
          .that()
          .resideOutsideOfPackage(CASES)
          .should()
          .dependOnClassesThat()
          .resideInAPackage(CASES);

  /** Compiled rules are the rule engine's own output; everything else goes through one package. */
  @ArchTest
  static final ArchRule ONE_PACKAGE_TOUCHES_DROOLS =
      noClasses()
          .that()
          .resideOutsideOfPackages("io.github.tiderule.rules", COMPILED_RULES)
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("org.drools..", "org.kie..");

  @ArchTest
  static final ArchRule ONLY_FORMAT_KNOWS_THE_PARSER =
      noClasses()
          .that()
          .resideOutsideOfPackages(FORMAT, CASES)
          .should()
          .dependOnClassesThat()
          .resideInAPackage("com.fasterxml.jackson..");

  @ArchTest
  static final ArchRule ONLY_THE_DOORS_EXIT =
      noClasses()
          .that()
          .resideOutsideOfPackages(API, CASES)
          .should()
          .callMethod(System.class, "exit", int.class);

  @ArchTest
  static final ArchRule ENGINE_READS_NO_CLOCK =
      noClasses()
          .that()
          .resideInAnyPackage(ENGINE, RULES)
          .should()
          .callMethod(java.time.Instant.class, "now")
          .orShould()
          .callMethod(System.class, "currentTimeMillis")
          .orShould()
          .dependOnClassesThat()
          .areAssignableTo(java.util.Random.class);

  @ArchTest
  static final ArchRule LIBRARY_LOGS_NOTHING =
      noClasses()
          .that()
          .resideInAnyPackage(ENGINE, RULES)
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("org.slf4j..", "java.util.logging..", "org.apache.logging..");

  private static final String[] SHEET = {
    "io.github.tiderule.api.words..",
    "io.github.tiderule.api.report..",
    "io.github.tiderule.api.picture..",
    "io.github.tiderule.api.paper..",
    "io.github.tiderule.api.calendar.."
  };
  private static final String[] CLINIC = {
    "io.github.tiderule.api.record..",
    "io.github.tiderule.api.access..",
    "io.github.tiderule.api.service..",
    "io.github.tiderule.api.page.."
  };
  private static final String[] COMMANDS = {
    "io.github.tiderule.api", "io.github.tiderule.api.command.."
  };

  /** Whoever takes the library for its JSON gets nothing else with it. */
  @ArchTest
  static final ArchRule FORMAT_NEEDS_THE_ENGINE_AND_A_PARSER_ALONE =
      classes()
          .that()
          .resideInAPackage(FORMAT)
          .should()
          .onlyDependOnClassesThat()
          .resideInAnyPackage(
              FORMAT,
              ENGINE,
              RULES,
              "com.fasterxml.jackson.core..",
              "org.apache.commons.csv..",
              "org.jspecify.annotations..",
              "java..");

  @ArchTest
  static final ArchRule SHEET_KNOWS_NEITHER_RECORD_NOR_COMMAND =
      noClasses()
          .that()
          .resideInAnyPackage(SHEET)
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage(CLINIC)
          .orShould()
          .dependOnClassesThat()
          .resideInAnyPackage(COMMANDS);

  @ArchTest
  static final ArchRule CLINIC_KNOWS_NO_COMMAND =
      noClasses()
          .that()
          .resideInAnyPackage(CLINIC)
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage(COMMANDS);

  /** So that no package of a door stays outside the rules above. */
  @ArchTest
  static final ArchRule EVERY_PACKAGE_HAS_ITS_MODULE =
      classes()
          .that()
          .resideInAPackage(API)
          .should()
          .resideInAnyPackage(
              Stream.of(SHEET, CLINIC, COMMANDS).flatMap(Stream::of).toArray(String[]::new));

  @ArchTest
  static final ArchRule PACKAGES_OF_FORMAT_MAKE_NO_CIRCLE =
      slices().matching("io.github.tiderule.format.(**)").should().beFreeOfCycles();

  private static final String RECORD = "io.github.tiderule.api.record..";
  private static final String ACCESS = "io.github.tiderule.api.access..";
  private static final String SERVICE = "io.github.tiderule.api.service..";
  private static final String COMMAND = "io.github.tiderule.api.command..";
  private static final String[] HTTP = {"io.javalin..", "org.eclipse.jetty..", "jakarta.servlet.."};

  @ArchTest
  static final ArchRule ONLY_THE_SERVICE_KNOWS_HTTP =
      noClasses()
          .that()
          .resideOutsideOfPackage(SERVICE)
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage(HTTP);

  @ArchTest
  static final ArchRule ONLY_RECORD_AND_ACCESS_KNOW_THE_DATABASE =
      noClasses()
          .that()
          .resideOutsideOfPackages(RECORD, ACCESS)
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("org.jdbi..", "org.flywaydb..", "com.zaxxer..", "java.sql..");

  @ArchTest
  static final ArchRule RECORD_KNOWS_NEITHER_PEOPLE_NOR_DOORS =
      noClasses()
          .that()
          .resideInAPackage(RECORD)
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage(ACCESS, SERVICE, COMMAND);

  @ArchTest
  static final ArchRule ACCESS_KNOWS_NO_DOORS =
      noClasses()
          .that()
          .resideInAPackage(ACCESS)
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage(SERVICE, COMMAND);

  @ArchTest
  static final ArchRule DOORS_MAKE_NO_CIRCLE =
      slices().matching("io.github.tiderule.api.(*)..").should().beFreeOfCycles();

  /** Nor does any package of them with another, however deep. */
  @ArchTest
  static final ArchRule PACKAGES_OF_DOORS_MAKE_NO_CIRCLE =
      slices().matching("io.github.tiderule.api.(**)").should().beFreeOfCycles();

  /** The service and the record are told the time, so that tests can tell it. */
  @ArchTest
  static final ArchRule RECORD_AND_SERVICE_READ_NO_CLOCK =
      noClasses()
          .that()
          .resideInAnyPackage(RECORD, ACCESS, SERVICE)
          .should()
          .callMethod(java.time.Instant.class, "now")
          .orShould()
          .callMethod(System.class, "currentTimeMillis");

  /** What of the engine is meant to be used; its other rooms are its own. */
  private static final String[] ENGINE_FACE = {
    "io.github.tiderule.engine",
    "io.github.tiderule.engine.advice..",
    "io.github.tiderule.engine.change",
    "io.github.tiderule.engine.validation"
  };

  /** The cases alone look inside, to hold its parts to what is published. */
  @ArchTest
  static final ArchRule ENGINE_IS_USED_THROUGH_ITS_FACE =
      noClasses()
          .that()
          .resideOutsideOfPackages(ENGINE, CASES)
          .should()
          .dependOnClassesThat(resideInAPackage(ENGINE).and(resideOutsideOfPackages(ENGINE_FACE)));
}
