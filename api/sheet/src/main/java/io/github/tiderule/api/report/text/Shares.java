package io.github.tiderule.api.report.text;

import io.github.tiderule.api.words.Texts;
import io.github.tiderule.engine.advice.EggShare;

/** Shares, probabilities and spans of hours in words. */
public final class Shares {

  private static final Texts TEXTS = Texts.ofReports();

  private Shares() {}

  /**
   * As in {@code 82 in 100}. A share that is not nothing never reads 0, nor one short of all 100.
   */
  public static String inHundred(double share) {
    return TEXTS.say("share.in-hundred", number(share));
  }

  /**
   * What happens one time in ten, as the end of a sentence; nothing where that is all but all, or
   * no less than what happens on average, as where few but bad chances pull the average down.
   */
  public static String unlucky(EggShare share) {
    double p10 = share.p10();
    if (p10 >= 0.985 || p10 >= share.mean()) {
      return "";
    }
    return p10 < 0.015 ? TEXTS.say("share.unlucky-none") : TEXTS.say("share.unlucky", number(p10));
  }

  /** As in {@code about 91 of 100 eggs (if unlucky, 72)}, and a full stop. */
  public static String expected(EggShare share) {
    String mean = number(share.mean());
    String unlucky = number(share.unlucky());
    String expected = isSpanned(share.mean()) ? mean : TEXTS.say("share.about", mean);
    return mean.equals(unlucky)
        ? TEXTS.say("share.expected", expected)
        : TEXTS.say("share.expected.unlucky", expected, unlucky);
  }

  /** As in {@code 82}, {@code under 1}, {@code over 99}. */
  public static String number(double share) {
    if (!(share > 0)) {
      return "0";
    }
    if (isSpanned(share)) {
      return TEXTS.say(share < 0.5 ? "share.under" : "share.over");
    }
    return Long.toString(Math.round(share * 100));
  }

  /** Whether a share is told as being under or over a hundredth, which no more is about it. */
  private static boolean isSpanned(double share) {
    long hundredths = Math.round(share * 100);
    return share > 0 && share < 1 && (hundredths == 0 || hundredths == 100);
  }

  /** As in {@code 1 hour} or {@code 31 hours}, without a sign. */
  public static String hours(double hours) {
    long whole = Math.round(Math.abs(hours));
    return TEXTS.count("share.hours", whole);
  }
}
