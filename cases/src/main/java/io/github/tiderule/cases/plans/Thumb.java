package io.github.tiderule.cases.plans;

import java.util.List;
import java.util.stream.DoubleStream;

/** Rules of thumb for the days, and somebody who keeps to one. */
enum Thumb {
  DAYS_9_11_13("days 9, 11, 13"),
  DAYS_10_12_14("days 10, 12, 14"),
  PAST_FIVE("first above 5, then +2 or +3"),
  PAST_FIVE_TWO("first above 5, then +2"),
  LH_FIVE("LH +5, else above 5"),
  LH_SIX("LH +6, else above 5");

  /** Morning and afternoon windows stand for these times of the day. */
  private static final double MORNING = 10 / 24.0;

  private static final double AFTERNOON = 17 / 24.0;

  /** Chilled semen comes with the courier of the day before. */
  private static final double COURIER_AGE_HOURS = 27;

  private final String words;

  Thumb(String words) {
    this.words = words;
  }

  String words() {
    return words;
  }

  /**
   * The doses of a season; none where the rule never comes to a day.
   *
   * <p>Fixed days count from the noted first blood. With one dose the middle day is taken, with two
   * the last two. The first value above 5 is dated by its drawing; two days later for all but
   * frozen semen, which is three days later, and further doses as soon after as they may be. The
   * day of the first positive LH test, where the same blood shows one, is followed by five or six
   * days for frozen semen, and by one less for the others; where no test shows it, the value above
   * 5 decides.
   *
   * @param noted the noted first blood, whole days
   * @param tests what testing every second day shows
   */
  List<Given> doses(Row row, int noted, Blood.EverySecondDay tests) {
    double[] days =
        switch (this) {
          case DAYS_9_11_13 -> fixed(row, noted + 9);
          case DAYS_10_12_14 -> fixed(row, noted + 10);
          case PAST_FIVE -> after(row, tests.pastFive(), frozen(row) ? 3 : 2);
          case PAST_FIVE_TWO -> after(row, tests.pastFive(), 2);
          case LH_FIVE -> afterLh(row, tests, 5);
          case LH_SIX -> afterLh(row, tests, 6);
        };
    return DoubleStream.of(days).mapToObj(day -> dose(row, day)).toList();
  }

  private static boolean frozen(Row row) {
    return row == Row.FROZEN_ONE || row == Row.FROZEN_TWO;
  }

  private static double[] afterLh(Row row, Blood.EverySecondDay tests, int frozenDays) {
    return Double.isInfinite(tests.lhSeen())
        ? after(row, tests.pastFive(), frozen(row) ? frozenDays - 2 : 2)
        : after(row, tests.lhSeen(), frozen(row) ? frozenDays : frozenDays - 1);
  }

  private static double[] fixed(Row row, double first) {
    return switch (row.most()) {
      case 1 -> new double[] {first + 2};
      case 2 -> new double[] {first + 2, first + 4};
      default -> new double[] {first, first + 2, first + 4};
    };
  }

  private static double[] after(Row row, double drawn, int later) {
    if (Double.isInfinite(drawn)) {
      return new double[0];
    }
    double[] days = new double[row.most()];
    for (int i = 0; i < days.length; i++) {
      days[i] = Math.floor(drawn) + later + i * row.spacingHours() / 24;
    }
    return days;
  }

  private static Given dose(Row row, double day) {
    boolean chilled = row == Row.CHILLED_ONE || row == Row.CHILLED_TWO;
    return new Given(day + (chilled ? AFTERNOON : MORNING), COURIER_AGE_HOURS);
  }
}
