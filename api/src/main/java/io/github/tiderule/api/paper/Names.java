package io.github.tiderule.api.paper;

import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.advice.Advice;

/** What a document is called. */
final class Names {

  private static final int LONGEST = 120;

  private Names() {}

  static String title(String what, CycleRecord cycle, Advice advice) {
    String name = cycle.female().name();
    String id = advice.femaleId();
    String who = name != null ? name : id != null ? id : "an unnamed female";
    int letters = who.codePointCount(0, who.length());
    return what
        + (letters <= LONGEST ? who : who.substring(0, who.offsetByCodePoints(0, LONGEST)) + "…");
  }
}
