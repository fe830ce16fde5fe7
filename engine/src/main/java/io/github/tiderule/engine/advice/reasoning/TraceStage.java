package io.github.tiderule.engine.advice.reasoning;

import io.github.tiderule.rules.Chapter;
import io.github.tiderule.rules.fact.Worded;
import java.util.Locale;

/** The parts of the reasoning, in the order they are told. */
public enum TraceStage implements Worded {
  READING,
  FINDINGS,
  /** The estimate of LH peak and ovulation. */
  TIMELINE,
  DAYS,
  NEXT,
  CARE;

  @Override
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** Where what the rules of a chapter say is told. */
  public static TraceStage of(Chapter chapter) {
    return switch (chapter) {
      case READING -> READING;
      case FINDINGS -> FINDINGS;
      case DAYS -> DAYS;
      case NEXT -> NEXT;
      case CARE -> CARE;
    };
  }
}
