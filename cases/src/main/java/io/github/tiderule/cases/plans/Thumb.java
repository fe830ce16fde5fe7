package io.github.tiderule.cases.plans;

import java.util.List;
import java.util.stream.DoubleStream;

/** Rules of thumb for the days, and somebody who keeps to one. */
enum Thumb {
  DAYS_9_11_13("days 9, 11, 13"),
  DAYS_10_12_14("days 10, 12, 14"),
  PAST_FIVE("first above 5, then +2 or +3");

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
   * The doses of a season.
   *
   * <p>Fixed days count from the noted first blood. With one dose the middle day is taken, with two
   * the last two. The first value above 5 is dated by its drawing; two days later for all but
   * frozen semen, which is three days later, and further doses as soon after as they may be.
   *
   * @param noted the noted first blood, whole days
   * @param pastFive day of the drawing whose value was the first above 5
   */
  List<Given> doses(Row row, int noted, double pastFive) {
    double[] days =
        switch (this) {
          case DAYS_9_11_13 -> fixed(row, noted + 9);
          case DAYS_10_12_14 -> fixed(row, noted + 10);
          case PAST_FIVE -> after(row, Math.floor(pastFive));
        };
    return DoubleStream.of(days).mapToObj(day -> dose(row, day)).toList();
  }

  private static double[] fixed(Row row, double first) {
    return switch (row.most()) {
      case 1 -> new double[] {first + 2};
      case 2 -> new double[] {first + 2, first + 4};
      default -> new double[] {first, first + 2, first + 4};
    };
  }

  private static double[] after(Row row, double day) {
    double first = day + (row == Row.FROZEN_ONE || row == Row.FROZEN_TWO ? 3 : 2);
    double[] days = new double[row.most()];
    for (int i = 0; i < days.length; i++) {
      days[i] = first + i * row.spacingHours() / 24;
    }
    return days;
  }

  private static Given dose(Row row, double day) {
    boolean chilled = row == Row.CHILLED_ONE || row == Row.CHILLED_TWO;
    return new Given(day + (chilled ? AFTERNOON : MORNING), COURIER_AGE_HOURS);
  }
}
