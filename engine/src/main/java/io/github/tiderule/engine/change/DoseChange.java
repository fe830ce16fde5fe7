package io.github.tiderule.engine.change;

import io.github.tiderule.rules.fact.Worded;
import java.time.OffsetDateTime;

/** What became of one time of the earlier plan. */
public record DoseChange(OffsetDateTime at, Fate fate) {

  /** What became of it. */
  public enum Fate implements Worded {
    /** It stands in the later plan. */
    STANDS("stands"),
    /** A breeding at about that time is in the later record. */
    DONE("done"),
    /** The time has passed, and no breeding is in the record. */
    PASSED("passed"),
    /** It lies ahead and is in the plan no more. */
    WITHDRAWN("withdrawn");

    private final String word;

    Fate(String word) {
      this.word = word;
    }

    @Override
    public String word() {
      return word;
    }
  }
}
