package io.github.tiderule.api.report;

import io.github.tiderule.api.report.text.Page;
import io.github.tiderule.api.report.text.SectionKind;
import io.github.tiderule.api.report.text.Shares;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.course.Caesarean;
import io.github.tiderule.engine.advice.course.CountedFrom;
import io.github.tiderule.engine.advice.course.Happened;
import io.github.tiderule.engine.advice.course.LookBack;
import io.github.tiderule.engine.advice.course.Milestone;
import io.github.tiderule.engine.advice.course.Pregnancy;
import io.github.tiderule.engine.advice.course.RedFlag;
import io.github.tiderule.engine.advice.course.Whelping;
import io.github.tiderule.rules.conclusion.care.RedFlagKind;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Whelping, what is due in a pregnancy, what is past of it, days for a caesarean, red flags, and
 * the whelping beside its forecast: of these, what the moment asks for.
 */
final class PregnancySection {

  private static final Texts TEXTS = Texts.ofReports();

  private PregnancySection() {}

  static void write(Page page, Advice advice) {
    whelping(page, advice.course().whelping(), advice.course().pregnancy() != null);
    milestones(page, advice);
    happened(page, advice.course().pregnancy());
    caesarean(page, advice.course().caesarean());
    lookBack(page, advice.course().lookBack());
    redFlags(page, advice.course().pregnancy());
  }

  private static void whelping(Page page, @Nullable Whelping whelping, boolean bred) {
    if (whelping == null) {
      return;
    }
    page.heading(bred ? SectionKind.WHELPING : SectionKind.WHELPING_IF);
    LocalDate median = whelping.median().toLocalDate();
    page.indented(
        2,
        TEXTS.say(
            whelping.countedFrom() == CountedFrom.DIOESTRUS
                ? "whelping.from-shift"
                : "whelping.from-ovulation",
            page.telling().words().day(median),
            page.telling().words().day(whelping.p05().toLocalDate()),
            page.telling().words().day(whelping.p95().toLocalDate())));
    whelping.notes().forEach(note -> page.hanging(2, "-", page.telling().say(note) + "."));
  }

  private static void milestones(Page page, Advice advice) {
    Pregnancy pregnancy = advice.course().pregnancy();
    if (pregnancy == null) {
      return;
    }
    List<Milestone> ahead = ahead(pregnancy, advice.asOf());
    if (ahead.isEmpty()) {
      return;
    }
    page.heading(SectionKind.PREGNANCY);
    for (Milestone milestone : ahead) {
      page.hanging(
          2,
          "-",
          TEXTS.say(
              "pregnancy.milestone",
              page.telling().words().shortDay(milestone.from().toLocalDate()),
              page.telling().words().shortDay(milestone.to().toLocalDate()),
              page.telling().sayWithin(milestone.title())));
    }
    page.indented(2, TEXTS.say("pregnancy.counted"));
  }

  /** What is still to come of what is due. */
  static List<Milestone> ahead(Pregnancy pregnancy, OffsetDateTime now) {
    return pregnancy.milestones().stream()
        .filter(milestone -> !milestone.to().isBefore(now))
        .toList();
  }

  private static void happened(Page page, @Nullable Pregnancy pregnancy) {
    if (pregnancy == null || pregnancy.happened().isEmpty()) {
      return;
    }
    page.heading(SectionKind.HAPPENED);
    for (Happened one : pregnancy.happened()) {
      page.hanging(
          2,
          "-",
          TEXTS.say(
              "pregnancy.happened",
              page.telling().words().shortDay(one.on()),
              one.daysAfterOvulation(),
              page.telling().sayWithin(one.text())));
    }
  }

  private static void caesarean(Page page, @Nullable Caesarean caesarean) {
    if (caesarean == null) {
      return;
    }
    page.heading(SectionKind.CAESAREAN);
    for (Caesarean.Day day : caesarean.days()) {
      page.hanging(
          2,
          "-",
          TEXTS.say(
              "caesarean.day",
              page.telling().words().shortDay(day.day()),
              day.daysAfterOvulation(),
              page.telling().sayWithin(day.text()),
              Shares.inHundred(day.chanceEarly()),
              Shares.inHundred(day.chanceBegun())));
    }
    page.indented(2, page.telling().say(caesarean.text()) + ".");
  }

  private static void lookBack(Page page, @Nullable LookBack lookBack) {
    if (lookBack == null) {
      return;
    }
    page.heading(SectionKind.LOOKING_BACK);
    page.indented(
        2,
        TEXTS.say(
            "back.whelped",
            page.telling().words().day(lookBack.whelpedOn()),
            page.telling().words().day(lookBack.median().toLocalDate()),
            page.telling().words().day(lookBack.p05().toLocalDate()),
            page.telling().words().day(lookBack.p95().toLocalDate())));
    page.indented(2, page.telling().say(lookBack.text()) + ".");
    page.indented(
        2,
        TEXTS.say(
            "back.ovulated",
            page.telling().words().about(lookBack.ovulation().median()),
            page.telling().words().about(lookBack.ovulation().p05()),
            page.telling().words().about(lookBack.ovulation().p95())));
  }

  private static void redFlags(Page page, @Nullable Pregnancy pregnancy) {
    if (pregnancy == null) {
      return;
    }
    @Nullable RedFlagKind kind = null;
    for (RedFlag flag : pregnancy.redFlags()) {
      if (flag.kind() != kind) {
        kind = flag.kind();
        page.heading(heading(kind));
      }
      page.hanging(2, "-", page.telling().say(flag.text()) + ".");
    }
  }

  private static SectionKind heading(RedFlagKind kind) {
    return switch (kind) {
      case PREGNANCY -> SectionKind.FLAGS_PREGNANCY;
      case WHELPING -> SectionKind.FLAGS_WHELPING;
      case AFTER_WHELPING -> SectionKind.FLAGS_AFTER_WHELPING;
    };
  }
}
