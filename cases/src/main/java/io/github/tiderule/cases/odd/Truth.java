package io.github.tiderule.cases.odd;

/**
 * Everything that is true of one simulated female. Times are days after midnight of the day she
 * began to bleed.
 *
 * @param noticedAfter whole days by which first blood was noted too late
 * @param bleedingStops day on which the first bleeding stops, where the season breaks off
 * @param trueBlood day on which the bleeding of the season that is asked about begins: 0, or after
 *     a broken-off season the day she begins anew
 * @param ovulation infinite where she does not ovulate
 * @param dioestrus day the smear turns; infinite for never
 * @param highFrom LH is high from then on
 * @param highUntil until then
 * @param burstFrom start of an early burst; infinite for none
 * @param burstUntil end of that burst
 * @param cornifiedFrom the day from which the smear is full
 * @param cornifiedUntil the day from which cells are cornified no more though nothing turned
 */
record Truth(
    Kind kind,
    int number,
    int noticedAfter,
    double bleedingStops,
    double trueBlood,
    double ovulation,
    double dioestrus,
    double highFrom,
    double highUntil,
    double burstFrom,
    double burstUntil,
    double cornifiedFrom,
    double cornifiedUntil,
    MarkedLevel progesterone) {

  private static final double NEVER = Double.POSITIVE_INFINITY;

  boolean ovulates() {
    return Double.isFinite(ovulation);
  }

  /**
   * Whether, in a season without ovulation, her level has not risen for so many days: before that
   * it is the level of any season.
   */
  boolean risesNoMore(double day, double forDays) {
    return day >= progesterone.topBefore(day < trueBlood ? trueBlood : NEVER) + forDays;
  }

  boolean lhHighAt(double day) {
    return (day >= highFrom && day <= highUntil) || (day >= burstFrom && day <= burstUntil);
  }

  boolean turnedAt(double day) {
    return day >= dioestrus;
  }

  /** True share of cornified cells, per cent. */
  double cornifiedAt(double day) {
    if (turnedAt(day)) {
      return Math.max(10, 50 - 20 * (day - dioestrus));
    }
    if (day < trueBlood) {
      return Math.max(12, Math.min(12 + 7 * day, 80 - 10 * Math.max(0, day - bleedingStops)));
    }
    double climbed = 95 - 12 * Math.max(0, cornifiedFrom - day);
    double fallen = 95 - 10 * Math.max(0, day - cornifiedUntil);
    return Math.max(12, Math.min(climbed, fallen));
  }
}
