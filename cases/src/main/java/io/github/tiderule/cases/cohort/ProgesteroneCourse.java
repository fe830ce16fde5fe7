package io.github.tiderule.cases.cohort;

/**
 * One female's true progesterone through one season, ng/mL on the radioimmunoassay scale.
 *
 * <p>On the log scale it climbs from a baseline to a luteal level along a power of a logistic: ln P
 * = ln b + ln(top/b)·(1 + e^−x)^−q with x = speed·(day − ovulation) + offset. A plateau lifts what
 * lies below it from its start on. A swing from day to day multiplies all of it.
 *
 * @param baseline level long before the rise
 * @param top level of the luteal phase; equals the baseline where nothing rises
 * @param speed of the climb, per day
 * @param offset place on the climb at the day of ovulation
 * @param power sharpness of the start against the end
 * @param ovulation day the climb is placed by
 * @param plateauFrom day a plateau begins; infinite for none
 * @param plateauLevel its level
 * @param swing log swing at each midnight from day {@code firstSwing} on
 */
record ProgesteroneCourse(
    double baseline,
    double top,
    double speed,
    double offset,
    double power,
    double ovulation,
    double plateauFrom,
    double plateauLevel,
    double[] swing,
    int firstSwing) {

  /** Level in her blood, without the pulses within a day. */
  double at(double day) {
    return smoothAt(day) * Math.exp(swingAt(day));
  }

  /** Level of the climb alone, without plateau and swing. */
  double climbAt(double day) {
    return baseline * Math.pow(top / baseline, Math.pow(1 + Math.exp(-place(day)), -power));
  }

  /** Growth of the climb alone, log per day. */
  double growthAt(double day) {
    double part = 1 / (1 + Math.exp(-place(day)));
    return Math.log(top / baseline) * power * speed * Math.pow(part, power) * (1 - part);
  }

  private double place(double day) {
    return speed * (day - ovulation) + offset;
  }

  private double smoothAt(double day) {
    double level = climbAt(day);
    double reached = 1 / (1 + Math.exp(-(day - plateauFrom) / 0.25));
    double plateau = baseline * Math.pow(plateauLevel / baseline, reached);
    return Math.max(level, plateau);
  }

  private double swingAt(double day) {
    double place = Math.min(Math.max(day - firstSwing, 0), swing.length - 1.001);
    int i = (int) place;
    double part = place - i;
    return swing[i] * (1 - part) + swing[i + 1] * part;
  }
}
