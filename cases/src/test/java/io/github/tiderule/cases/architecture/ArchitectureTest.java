package io.github.tiderule.cases.architecture;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

/** The arrows: api to engine to rules, and nothing back. */
@AnalyzeClasses(
    packages = "io.github.tiderule",
    importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {

  private static final String RULES = "io.github.tiderule.rules..";
  private static final String COMPILED_RULES = "io.github.tiderule.rulebase..";
  private static final String ENGINE = "io.github.tiderule.engine..";
  private static final String API = "io.github.tiderule.api..";
  private static final String CASES = "io.github.tiderule.cases..";

  @ArchTest
  static final ArchRule RULES_KNOW_NOBODY =
      noClasses()
          .that()
          .resideInAnyPackage(RULES, COMPILED_RULES)
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage(ENGINE, API, CASES);

  @ArchTest
  static final ArchRule ENGINE_KNOWS_RULES_ONLY =
      noClasses()
          .that()
          .resideInAPackage(ENGINE)
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage(API, CASES, COMPILED_RULES);

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
  static final ArchRule ONLY_THE_DOORS_KNOW_JSON =
      noClasses()
          .that()
          .resideOutsideOfPackages(API, CASES)
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
  static final ArchRule ENGINE_PARTS_MAKE_NO_CIRCLE =
      slices().matching("io.github.tiderule.engine.(*)..").should().beFreeOfCycles();
}
