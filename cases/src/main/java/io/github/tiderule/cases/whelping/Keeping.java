package io.github.tiderule.cases.whelping;

/**
 * What a keeper has done.
 *
 * @param smears whether smears are taken daily until two days past the shift
 * @param scanned whether fetuses are measured at a scan
 * @param counted whether pups are counted on a radiograph
 * @param temperatures whether her temperature is taken twice a day until it falls
 */
public record Keeping(
    String words, boolean smears, boolean scanned, boolean counted, boolean temperatures) {

  /** Progesterone alone. */
  public static final Keeping PROGESTERONE =
      new Keeping("progesterone", false, false, false, false);

  /** With smears past the shift. */
  public static final Keeping SMEARS = new Keeping("and smears", true, false, false, false);

  /** With a scan and a count of pups. */
  public static final Keeping SCAN =
      new Keeping("progesterone, scan, pups counted", false, true, true, false);

  /** With temperatures; asked when the first low one is read. */
  public static final Keeping TEMPERATURES =
      new Keeping("progesterone, scan, temperature fell", false, true, true, true);
}
