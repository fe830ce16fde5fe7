package io.github.tiderule.rules;

import io.github.tiderule.rules.kennel.BeforeSeasonAsked;
import io.github.tiderule.rules.kennel.HealthTest;
import io.github.tiderule.rules.kennel.HealthTestKind;
import io.github.tiderule.rules.kennel.HealthTestResult;
import io.github.tiderule.rules.kennel.LastWhelping;
import io.github.tiderule.rules.kennel.Stud;
import io.github.tiderule.rules.kennel.Whose;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * Facts about the time before a season, in the words of a test line: {@code test stud brucella -10
 * negative}. Times are days after first blood.
 */
final class KennelFacts {

  private KennelFacts() {}

  static Object of(Words w) {
    return switch (w.get(0)) {
      case "asked" -> new BeforeSeasonAsked();
      case "whelped" -> new LastWhelping(FactLine.date(w.number(1)));
      case "stud" -> stud(w);
      default ->
          new HealthTest(
              FactLine.word(Whose.values(), w.get(1)),
              FactLine.word(HealthTestKind.values(), w.get(2)),
              FactLine.date(w.number(3)),
              FactLine.word(HealthTestResult.values(), w.get(4)),
              w.key("of"));
    };
  }

  private static Stud stud(Words w) {
    @Nullable String born = w.key("born");
    @Nullable String proven = w.key("proven");
    return new Stud(
        null,
        null,
        w.keyNumber("kg"),
        born == null ? null : LocalDate.parse(born),
        proven == null ? null : proven.equals("yes"));
  }
}
