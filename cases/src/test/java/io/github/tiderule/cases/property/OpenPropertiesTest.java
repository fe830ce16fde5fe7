package io.github.tiderule.cases.property;

import static io.github.tiderule.cases.property.Property.advise;

import com.fasterxml.jackson.databind.node.ObjectNode;
import io.github.tiderule.engine.advice.Advice;
import java.time.LocalDate;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;

/**
 * What should hold for every season and does not yet, each with a seed for which it fails. A test
 * here fails when the engine is mended; the property then belongs to {@link PropertiesTest}.
 */
class OpenPropertiesTest {

  /**
   * Fails for about 2 in 100 seasons: a plan is made down to a smaller share of her eggs than the
   * one below which a day is to be avoided.
   */
  @Test
  void noPlanBeginsOnADayToAvoid() {
    Property.stillFails(77, OpenPropertiesTest::plannedOnADayToAvoid);
  }

  /**
   * Fails for about 2 in 100 seasons: a breeding already done leaves nothing to gain, no plan is
   * made, and that is taken for a season that is over.
   */
  @Test
  void passedIsSaidOnlyWhenNoListedDayIsOpen() {
    Property.stillFails(31, OpenPropertiesTest::passedWithADayLeft);
  }

  /** Fails where the onset is unknown and no value dates her: time alone moves the estimate. */
  @Test
  void timeReopensNoDayEvenWithTheOnsetUnknown() {
    Property.stillFails(53, PropertiesTest::reopened);
  }

  private static Optional<String> plannedOnADayToAvoid(ObjectNode cycle) {
    Advice advice = advise(cycle);
    if (!Set.of("breed", "book").contains(advice.action().now().word()) || advice.plan() == null) {
      return Optional.empty();
    }
    LocalDate first = advice.plan().at().get(0).toLocalDate();
    return advice.breedingDays().stream()
        .filter(day -> day.day().equals(first) && day.verdict().word().equals("avoid"))
        .map(day -> advice.action().headline() + " But: " + day)
        .findFirst();
  }

  private static Optional<String> passedWithADayLeft(ObjectNode cycle) {
    Advice advice = advise(cycle);
    if (!advice.action().now().word().equals("passed")) {
      return Optional.empty();
    }
    return advice.breedingDays().stream()
        .filter(day -> !day.verdict().word().equals("avoid"))
        .map(day -> "passed, but " + day.day() + " is " + day.verdict())
        .findFirst();
  }
}
