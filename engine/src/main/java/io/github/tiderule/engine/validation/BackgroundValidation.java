package io.github.tiderule.engine.validation;

import io.github.tiderule.rules.kennel.Background;
import io.github.tiderule.rules.kennel.HealthTest;
import io.github.tiderule.rules.kennel.HealthTestKind;
import io.github.tiderule.rules.kennel.HealthTestResult;
import io.github.tiderule.rules.kennel.Stud;
import io.github.tiderule.rules.kennel.Whose;
import org.jspecify.annotations.Nullable;

/** Checks the time before a season: tests, the last litter and the male. */
record BackgroundValidation(SeasonDates dates) {

  void check(Place place, Background background) {
    place.day("lastWhelpedOn", background.lastWhelpedOn(), dates::past);
    place.parts("tests", background.tests(), 2 * Limits.TESTS, this::check);
    tooMany(place, background, Whose.FEMALE);
    tooMany(place, background, Whose.STUD);
    if (background.stud() != null) {
      check(place.of("stud"), background.stud());
    }
  }

  private static void tooMany(Place place, Background background, Whose whose) {
    if (background.tests() != null && background.tests().size() <= 2 * Limits.TESTS) {
      long of =
          background.tests().stream().filter(test -> test != null && test.whose() == whose).count();
      place.note(Presence.tooMany("tests", (int) of, Limits.TESTS));
    }
  }

  private void check(Place place, HealthTest test) {
    place.has("whose", test.whose());
    if (test.whose() == Whose.BOTH) {
      String message = "whose is \"both\"; a test is of one dog";
      place.note(Violation.of("whose", Violation.Code.UNKNOWN_WORD, test.whose(), message));
    }
    place.has("on", test.on());
    place.day("on", test.on(), dates::past);
    place.text("condition", test.condition(), Limits.NAME);
    @Nullable HealthTestKind kind = test.kind();
    @Nullable HealthTestResult result = test.result();
    place.has("kind", kind);
    place.has("result", result);
    if (kind != null && result != null) {
      place.note(SeasonConsistency.result(kind, result));
    }
  }

  private void check(Place place, Stud stud) {
    place.text("name", stud.name(), Limits.NAME);
    place.text("breed", stud.breed(), Limits.NAME);
    place.number("bodyMassKg", stud.bodyMassKg(), Limits.BODY_MASS);
    place.day("bornOn", stud.bornOn(), dates::past);
  }
}
