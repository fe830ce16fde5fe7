package io.github.tiderule.engine;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.library.dependencies.SliceAssignment;
import com.tngtech.archunit.library.dependencies.SliceIdentifier;
import java.util.List;

/** The rooms of the engine, and the arrows between them and inside them. */
@AnalyzeClasses(
    packages = "io.github.tiderule.engine",
    importOptions = ImportOption.DoNotIncludeTests.class)
class RoomsTest {

  private static final String ENGINE = "io.github.tiderule.engine";

  /** The trip of a season, room by room; the face makes it, and tells. */
  private static final List<String> TRIP =
      List.of("season", "explain", "plan", "testing", "action");

  @ArchTest
  static final ArchRule ROOMS_MAKE_NO_CIRCLE =
      slices().matching("io.github.tiderule.(**)").should().beFreeOfCycles();

  /**
   * Nor do the classes of a room, each with those inside it; but a record begins its own builder,
   * and asks what was known of it earlier.
   */
  @ArchTest
  static final ArchRule CLASSES_MAKE_NO_CIRCLE =
      slices()
          .assignedFrom(new Outermost())
          .should()
          .beFreeOfCycles()
          .ignoreDependency(CycleRecord.class, CycleBuilder.class)
          .ignoreDependency(CycleRecord.class, Hindsight.class);

  /** What reckons with numbers knows neither what is on file nor what is planned. */
  @ArchTest
  static final ArchRule MODELS_KNOW_NO_SEASON =
      noClasses()
          .that()
          .resideInAnyPackage(rooms(List.of("timeline", "days", "whelping", "insemination")))
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage(rooms(List.of("season", "explain", "plan", "pregnancy", "sheet")));

  @ArchTest
  static final ArchRule ADVICE_KNOWS_NO_OTHER_ROOM =
      noClasses()
          .that()
          .resideInAPackage(ENGINE + ".advice..")
          .should()
          .dependOnClassesThat(
              JavaClass.Predicates.resideInAPackage(ENGINE + "..")
                  .and(JavaClass.Predicates.resideOutsideOfPackage(ENGINE + ".advice..")));

  /** A room of the trip is told only what the rooms before it found. */
  @ArchTest
  static void aSeasonGoesOneWay(JavaClasses classes) {
    for (int room = 0; room + 1 < TRIP.size(); room++) {
      noClasses()
          .that()
          .resideInAPackage(ENGINE + "." + TRIP.get(room))
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage(rooms(TRIP.subList(room + 1, TRIP.size())))
          .check(classes);
    }
  }

  private static String[] rooms(List<String> names) {
    return names.stream().map(name -> ENGINE + "." + name).toArray(String[]::new);
  }

  /** Takes a class with all that are inside it. */
  private static final class Outermost implements SliceAssignment {

    @Override
    public String getDescription() {
      return "outermost classes";
    }

    @Override
    public SliceIdentifier getIdentifierOf(JavaClass one) {
      JavaClass outermost = one;
      while (outermost.getEnclosingClass().isPresent()) {
        outermost = outermost.getEnclosingClass().get();
      }
      return SliceIdentifier.of(outermost.getName());
    }
  }
}
