package io.github.tiderule.api.paper;

import io.github.tiderule.api.report.text.Telling;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.advice.Advice;

/** What a document is called. */
final class Names {

  private static final Texts TEXTS = Texts.ofReports();

  private static final int LONGEST = 120;

  private Names() {}

  /**
   * The title of a document about a female, her name cut where it is endless.
   *
   * @param what the text that says what it is
   */
  static String title(String what, CycleRecord cycle, Advice advice) {
    String who = Telling.who(cycle.female().name(), advice.femaleId());
    int letters = who.codePointCount(0, who.length());
    return TEXTS.say(
        what,
        letters <= LONGEST ? who : who.substring(0, who.offsetByCodePoints(0, LONGEST)) + "…");
  }
}
