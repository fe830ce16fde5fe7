package io.github.tiderule.api.report.text;

import io.github.tiderule.api.words.Texts;

/** What a section of a report is about. One more part of a report is one more of these. */
public enum SectionKind {
  /** The lines at the head of a report, without a heading. */
  HEAD(""),
  /** The one thing to do now. */
  NOW("section.now"),
  /** What her values do. */
  VALUES("section.values"),
  /** Which days and when, and what to do for it. */
  PLAN("section.plan"),
  /** What to do on the day of insemination, and what the semen is worth. */
  SHEET("section.sheet"),
  /** What to see to before a season. */
  BEFORE_SEASON("section.before-season"),
  /** The ranked days. */
  DAYS("days.title"),
  /** When she ovulates, and how closely that is known. */
  HOW_SURE("section.how-sure"),
  /** What to test next, and when to ask again. */
  NEXT_TEST("section.next-test"),
  /** What must be answered first. */
  QUESTIONS("section.questions"),
  /** Results that are not taken as reported. */
  TAKEN("section.taken"),
  /** When she would whelp. */
  WHELPING_IF("section.whelping-if"),
  /** When she whelps, once she is bred. */
  WHELPING("section.whelping"),
  /** What is due in a pregnancy. */
  PREGNANCY("section.pregnancy"),
  /** What is past of a pregnancy. */
  HAPPENED("section.happened"),
  /** Days for a planned caesarean. */
  CAESAREAN("section.caesarean"),
  /** A whelping beside its forecast. */
  LOOKING_BACK("section.looking-back"),
  /** Signs in pregnancy that call a vet. */
  FLAGS_PREGNANCY("section.red-flags.pregnancy"),
  /** Signs at whelping that call a vet. */
  FLAGS_WHELPING("section.red-flags.whelping"),
  /** Signs after whelping that call a vet. */
  FLAGS_AFTER_WHELPING("section.red-flags.after-whelping"),
  /** Values at which the plan would be another. */
  WOULD_CHANGE("section.would-change"),
  /** What moved the estimate most. */
  WEIGHTS("section.weights"),
  /** What schools hold. */
  DISAGREEMENTS("section.disagreements"),
  /** What to take care of. */
  CAUTIONS("section.cautions"),

  /** Where ovulation lay in an earlier answer, and where it lies now. */
  OVULATION_MOVED("changes.ovulation"),
  /** Which entries changed an answer. */
  BECAUSE("changes.because"),
  /** Rules that speak in a later answer only. */
  RULES_NEW("section.rules-new"),
  /** Rules that spoke in an earlier answer only. */
  RULES_GONE("section.rules-gone"),
  /** Cautions of a later answer only. */
  CAUTIONS_NEW("changes.cautions-new"),
  /** Cautions of an earlier answer only. */
  CAUTIONS_GONE("changes.cautions-gone"),
  /** That two answers come from different rules. */
  RULES_REVISED("changes.rules"),

  /** What a clinic set otherwise, for a protocol's name. */
  LOCAL_PROTOCOL("trace.local"),
  /** What the rules of a stage say, for its word. */
  STAGE("trace.stage"),
  /** Rules that were near to speaking. */
  NOT_FIRED("trace.not-fired"),
  /** What schools hold, with rules and sources. */
  SCHOOLS("trace.schools"),
  /** What each observation does to the estimate. */
  INFLUENCE("trace.influence"),
  /** The numbers of the timeline. */
  TIMELINE("trace.timeline"),
  /** Every source cited. */
  SOURCES("trace.sources"),

  /** That a rule spoke. */
  SPOKE("rule.spoke"),
  /** That a rule spoke, for the number of its step. */
  SPOKE_AT("rule.spoke.step"),
  /** Why a rule kept silent. */
  SILENT("rule.silent"),
  /** That a rule was not asked. */
  NOT_ASKED("rule.not-asked"),

  /** All whelpings of a report in a few figures. */
  TOGETHER("accuracy.together"),

  /** Who is given which service of a stud. */
  SERVICES("stud.who"),
  /** What each female has of it. */
  FEMALES("stud.females"),
  /** Females that are left out. */
  LEFT_OUT("stud.left-out"),

  /** The lines at the foot of a report, without a heading. */
  FOOT("");

  private static final Texts TEXTS = Texts.ofReports();

  private final String text;

  SectionKind(String text) {
    this.text = text;
  }

  /**
   * Its heading; empty where it has none.
   *
   * @param parts what is filled into it
   */
  public String heading(Object... parts) {
    return text.isEmpty() ? "" : TEXTS.say(text, parts);
  }

  /** Whether it tells of signs that call a vet. */
  public boolean isRedFlags() {
    return this == FLAGS_PREGNANCY || this == FLAGS_WHELPING || this == FLAGS_AFTER_WHELPING;
  }
}
