package io.github.tiderule.rules.kennel;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a file tells of the time before a season.
 *
 * @param asked whether it tells anything of it, if only that there was no test
 * @param lastWhelpedOn the day she last whelped, if said
 * @param tests of both dogs, in the order of time
 * @param stud the male, if said
 */
public record Background(
    boolean asked, @Nullable LocalDate lastWhelpedOn, List<HealthTest> tests, @Nullable Stud stud) {

  private static final Comparator<HealthTest> ORDER =
      Comparator.comparing(HealthTest::on)
          .thenComparing(HealthTest::whose)
          .thenComparing(HealthTest::kind)
          .thenComparing(HealthTest::result)
          .thenComparing(HealthTest::condition, Comparator.nullsFirst(Comparator.naturalOrder()));

  public Background {
    tests = tests.stream().distinct().sorted(ORDER).toList();
  }

  /** What holds when nobody said anything. */
  public static Background unknown() {
    return new Background(false, null, List.of(), null);
  }
}
