package io.github.tiderule.format.cycle;

import io.github.tiderule.format.node.Field;
import io.github.tiderule.format.node.Fields;
import io.github.tiderule.format.problem.ProblemCode;
import io.github.tiderule.rules.kennel.Background;
import io.github.tiderule.rules.kennel.HealthTest;
import io.github.tiderule.rules.kennel.HealthTestKind;
import io.github.tiderule.rules.kennel.HealthTestResult;
import io.github.tiderule.rules.kennel.Stud;
import io.github.tiderule.rules.kennel.Whose;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Reads what a file tells of the time before a season: tests, the last litter and the male. */
final class BackgroundReader {

  private static final int MOST_TESTS = 100;

  private final Season season;

  private BackgroundReader(Season season) {
    this.season = season;
  }

  /** What of it stands in the female's object. */
  record OfFemale(boolean said, @Nullable LocalDate lastWhelpedOn, List<HealthTest> tests) {

    static OfFemale nothing() {
      return new OfFemale(false, null, List.of());
    }
  }

  static OfFemale ofFemale(Fields female, Season season) {
    Field whelped = female.optional("lastWhelpedOn");
    Field tests = female.optional("tests");
    return new OfFemale(
        whelped.isPresent() || tests.isPresent(),
        season.anyPastDay(whelped),
        new BackgroundReader(season).tests(tests, Whose.FEMALE));
  }

  static Background read(OfFemale female, @Nullable Fields stud, Season season) {
    if (stud == null) {
      return new Background(female.said(), female.lastWhelpedOn(), female.tests(), null);
    }
    List<HealthTest> tests = new ArrayList<>(female.tests());
    Stud male =
        new Stud(
            stud.optional("name").text(Texts.NAME),
            stud.optional("breed").text(Texts.NAME),
            stud.optional("bodyMassKg").number(FemaleReader.BODY_MASS),
            season.anyPastDay(stud.optional("bornOn")),
            stud.optional("provenSire").flag());
    tests.addAll(new BackgroundReader(season).tests(stud.optional("tests"), Whose.STUD));
    stud.refuseOthers();
    return new Background(true, female.lastWhelpedOn(), tests, male);
  }

  private List<HealthTest> tests(Field field, Whose whose) {
    List<HealthTest> tests = new ArrayList<>();
    for (Field entry : field.entries(MOST_TESTS)) {
      HealthTest test = test(entry.members(), whose);
      if (test != null) {
        tests.add(test);
      }
    }
    return tests;
  }

  private @Nullable HealthTest test(@Nullable Fields fields, Whose whose) {
    if (fields == null) {
      return null;
    }
    HealthTestKind kind = fields.required("kind").word(HealthTestKind.class);
    LocalDate on = season.anyPastDay(fields.required("on"));
    Field resultField = fields.required("result");
    HealthTestResult result = resultField.word(HealthTestResult.class);
    String condition = fields.optional("condition").text(Texts.NAME);
    fields.refuseOthers();
    if (kind == HealthTestKind.BRUCELLA && result != null && !ofInfection(result)) {
      resultField.refuse(
          ProblemCode.UNKNOWN_WORD,
          "result is \"" + result.word() + "\", which says nothing of an infection",
          result == HealthTestResult.CLEAR
              ? "Maybe \"negative\"? Allowed for brucella: negative, positive, unknown."
              : "Allowed for brucella: negative, positive, unknown.");
      return null;
    }
    return kind == null || on == null || result == null
        ? null
        : new HealthTest(whose, kind, on, result, condition);
  }

  private static boolean ofInfection(HealthTestResult result) {
    return switch (result) {
      case NEGATIVE, POSITIVE, UNKNOWN -> true;
      case CLEAR, CARRIER, AFFECTED -> false;
    };
  }
}
