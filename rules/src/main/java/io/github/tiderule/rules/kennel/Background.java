package io.github.tiderule.rules.kennel;

import io.github.tiderule.rules.fact.Listing;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a file tells of the time before a season.
 *
 * @param asked whether it tells anything of it, if only that there was no test
 * @param lastWhelpedOn the day she last whelped, not after the moment of the advice, if said
 * @param tests of both dogs, at most 100 of each, in the order of time
 * @param stud the male, if said
 */
public record Background(
    boolean asked, @Nullable LocalDate lastWhelpedOn, List<HealthTest> tests, @Nullable Stud stud) {

  private static final Comparator<HealthTest> ORDER =
      Comparator.comparing(HealthTest::on, present())
          .thenComparing(HealthTest::whose, present())
          .thenComparing(HealthTest::kind, present())
          .thenComparing(HealthTest::result, present())
          .thenComparing(HealthTest::condition, Comparator.nullsFirst(Comparator.naturalOrder()));

  /** Tests are put in order before anybody has checked that each says what it must. */
  private static <T extends Comparable<? super T>> Comparator<T> present() {
    return Comparator.nullsLast(Comparator.naturalOrder());
  }

  public Background {
    tests = Listing.sorted(tests, ORDER);
  }

  /** What holds when nobody said anything. */
  public static Background unknown() {
    return new Background(false, null, List.of(), null);
  }

  /** With the day she last whelped, not after the moment of the advice. */
  public Background lastWhelpedOn(LocalDate day) {
    return new Background(true, day, tests, stud);
  }

  /** With all tests of both dogs, at most 100 of each; none says that there was none. */
  public Background tests(HealthTest... all) {
    return new Background(true, lastWhelpedOn, Arrays.asList(all), stud);
  }

  /** With the male. */
  public Background stud(Stud male) {
    return new Background(true, lastWhelpedOn, tests, male);
  }
}
