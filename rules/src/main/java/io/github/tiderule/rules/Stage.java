package io.github.tiderule.rules;

import java.util.Locale;

/** The stages that rules speak in, in the order an evaluation runs through them. */
public enum Stage {
  /** Whether each observation is accepted, held with a question, or discounted. */
  READING(Chapter.READING),
  /** What the accepted ones show. */
  FINDINGS(Chapter.FINDINGS),
  /** What stops all talk of timing, or sends to a vet. */
  SAFETY(Chapter.CARE),
  /** Which days are supported, opposed or vetoed. */
  DAYS(Chapter.DAYS),
  /** When the trade tests next. */
  NEXT(Chapter.NEXT),
  /** What there is to say of a pregnancy, of whelping and of what is due. */
  COURSE(Chapter.CARE),
  /** What stands on the sheet for the day of insemination. */
  SHEET(Chapter.CARE),
  /** Other cautions, and where schools and habits stand. */
  NOTES(Chapter.CARE);

  private final Chapter chapter;

  Stage(Chapter chapter) {
    this.chapter = chapter;
  }

  /** Where its rules are told. */
  public Chapter chapter() {
    return chapter;
  }

  /** The stage's word, as it stands in a rule package. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
