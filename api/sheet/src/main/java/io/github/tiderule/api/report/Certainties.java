package io.github.tiderule.api.report;

import io.github.tiderule.api.report.text.Page;
import io.github.tiderule.api.report.text.SectionKind;
import io.github.tiderule.api.report.text.Shares;
import io.github.tiderule.api.report.text.Telling;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.api.words.Words;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.course.Ovulation;
import io.github.tiderule.engine.advice.course.SeasonCourse;
import io.github.tiderule.engine.advice.reasoning.Influence;
import io.github.tiderule.rules.conclusion.CourseKind;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** How sure a report is, and what made it so. */
final class Certainties {

  private static final Texts TEXTS = Texts.ofReports();

  /** A season without ovulation is named from this probability on. */
  private static final double WORTH_NAMING = 0.02;

  /** While her values do this, an estimate is no date. */
  private static final Set<CourseKind> UNDATED =
      Set.of(
          CourseKind.STANDING_STILL,
          CourseKind.FELL_BACK,
          CourseKind.FALLING_LATE,
          CourseKind.FITS_NOTHING);

  private static final double MORE_LIKELY_THAN_NOT = 0.5;

  /** An estimate that spreads further is told by days. */
  private static final Duration HOURS_MEAN_SOMETHING = Duration.ofHours(36);

  private Certainties() {}

  static void write(Page page, CycleRecord cycle, Advice advice) {
    page.heading(SectionKind.HOW_SURE);
    Ovulation ovulation = advice.timing().ovulation();
    String undated = undated(ovulation, advice.timing().seasonCourse());
    if (ovulation == null || undated != null) {
      page.indented(2, Objects.requireNonNull(undated));
      return;
    }
    Words words = page.telling().words();
    boolean past = !ovulation.median().isAfter(advice.asOf());
    page.indented(
        2,
        TEXTS.say(
            past ? "sure.past" : "sure.ahead",
            when(ovulation, ovulation.median(), words),
            when(ovulation, ovulation.p05(), words),
            when(ovulation, ovulation.p95(), words)));
    page.indented(2, TEXTS.say(ovulation.confirmed() ? "sure.proven" : "sure.not-proven"));
    if (ovulation.noOvulationProbability() >= WORTH_NAMING) {
      page.indented(
          2, TEXTS.say("sure.no-ovulation", Shares.inHundred(ovulation.noOvulationProbability())));
    }
    if (cycle.observations().isEmpty()) {
      page.indented(2, TEXTS.say("sure.first-blood-alone"));
    }
  }

  /** When she ovulates in one line, by days: an estimate that spreads over days has no hours. */
  static String inDays(CycleRecord cycle, Advice advice, Words words) {
    Ovulation ovulation = advice.timing().ovulation();
    String undated = undated(ovulation, advice.timing().seasonCourse());
    if (ovulation == null || undated != null) {
      return Objects.requireNonNull(undated);
    }
    return TEXTS.say(
        "screen.ovulation",
        words.shortDay(ovulation.median().toLocalDate()),
        words.days(ovulation.p05().toLocalDate(), ovulation.p95().toLocalDate()),
        TEXTS.say(
            ovulation.confirmed()
                ? "screen.proven"
                : cycle.observations().isEmpty()
                    ? "screen.first-blood-alone"
                    : "screen.not-proven"));
  }

  /** Why no date of ovulation is told; absent where one is. */
  private static @Nullable String undated(
      @Nullable Ovulation ovulation, @Nullable SeasonCourse course) {
    if (ovulation == null) {
      return TEXTS.say("sure.nothing");
    }
    if (ovulation.noOvulationProbability() > MORE_LIKELY_THAN_NOT) {
      return TEXTS.say("sure.probably-not", Shares.inHundred(ovulation.noOvulationProbability()));
    }
    return course != null && UNDATED.contains(course.kind()) ? TEXTS.say("sure.undated") : null;
  }

  /** By the clock only where ovulation is known closely enough for hours to mean something. */
  private static String when(Ovulation ovulation, OffsetDateTime at, Words words) {
    return ovulation.p05().plus(HOURS_MEAN_SOMETHING).isBefore(ovulation.p95())
        ? words.shortDay(at.toLocalDate())
        : words.about(at);
  }

  static void writeWeights(Page page, List<Influence> influences) {
    if (influences.isEmpty()) {
      return;
    }
    page.heading(SectionKind.WEIGHTS);
    Telling telling = page.telling();
    Influence most =
        influences.stream()
            .max(
                Comparator.comparingDouble(
                    influence ->
                        Math.abs(influence.ovulationShiftHours())
                            + Math.abs(influence.widthChangeHours())))
            .orElseThrow();
    page.indented(
        2,
        TEXTS.say(
            "weight.most",
            telling.observation(most.observation()),
            shift(most.ovulationShiftHours()),
            width(most.widthChangeHours())));
    for (Influence influence : influences) {
      if (influence.oddProbability() > MORE_LIKELY_THAN_NOT) {
        page.indented(
            2,
            TEXTS.say(
                "weight.odd",
                telling.observation(influence.observation()),
                Shares.inHundred(influence.oddProbability())));
      }
    }
  }

  /** What an observation did to the middle of ovulation, as a clause. */
  static String shift(double hours) {
    if (Math.abs(hours) < 0.5) {
      return TEXTS.say("weight.left");
    }
    return TEXTS.say(hours < 0 ? "weight.earlier" : "weight.later", Shares.hours(hours));
  }

  /** By how much a span changed. */
  static String width(double hours) {
    if (Math.abs(hours) < 0.5) {
      return TEXTS.say("weight.same-width");
    }
    return TEXTS.say(hours < 0 ? "weight.narrower" : "weight.wider", Shares.hours(hours));
  }
}
