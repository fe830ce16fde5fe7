package io.github.tiderule.cases.cohort;

/**
 * One simulated female in one season, with everything that is true of her.
 *
 * <p>All times are days after midnight (UTC) of the day she truly began to bleed.
 *
 * @param number her place in the cohort
 * @param noticedAfter whole days by which the keeper noted first blood too late
 * @param ovulates whether she ovulates this time; without, the times below place nothing
 * @param lhPeak day of the LH peak
 * @param ovulation day of ovulation
 * @param dioestrus day on which the smear turns
 * @param surgeFrom day the LH surge begins
 * @param surgeUntil day it ends
 * @param burstFrom day an early LH burst begins; infinite for none
 * @param burstUntil day it ends
 * @param cornifiedMiddle day on which half of the cells are cornified
 * @param cornifiedRate speed of that passage, per day
 */
public record Bitch(
    int number,
    int noticedAfter,
    boolean ovulates,
    double lhPeak,
    double ovulation,
    double dioestrus,
    double surgeFrom,
    double surgeUntil,
    double burstFrom,
    double burstUntil,
    double cornifiedMiddle,
    double cornifiedRate,
    ProgesteroneCourse progesterone) {

  /** Progesterone in her blood, ng/mL on the radioimmunoassay scale, without pulses in a day. */
  public double p4At(double day) {
    return progesterone.at(day);
  }

  /** Whether LH is high enough for a test to show it. */
  public boolean lhHighAt(double day) {
    return (day >= surgeFrom && day <= surgeUntil) || (day >= burstFrom && day <= burstUntil);
  }

  boolean inDioestrusAt(double day) {
    return ovulates && day >= dioestrus;
  }

  /** True share of cornified cells, per cent. */
  double cornifiedAt(double day) {
    double rising = 10 + 86 * (0.5 + Math.atan(cornifiedRate * (day - cornifiedMiddle)) / Math.PI);
    return inDioestrusAt(day)
        ? Math.max(12, rising - 62 * Math.min(1, day - dioestrus + 0.6))
        : rising;
  }
}
