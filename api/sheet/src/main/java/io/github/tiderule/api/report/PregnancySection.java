package io.github.tiderule.api.report;

import io.github.tiderule.api.report.text.LocalWords;
import io.github.tiderule.api.report.text.Page;
import io.github.tiderule.api.report.text.Section;
import io.github.tiderule.api.report.text.Shares;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.course.Caesarean;
import io.github.tiderule.engine.advice.course.Happened;
import io.github.tiderule.engine.advice.course.LookBack;
import io.github.tiderule.engine.advice.course.Milestone;
import io.github.tiderule.engine.advice.course.Pregnancy;
import io.github.tiderule.engine.advice.course.RedFlag;
import io.github.tiderule.engine.advice.course.Whelping;
import java.time.LocalDate;
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
    whelping(page, advice.whelping(), advice.pregnancy() != null);
    milestones(page, advice);
    happened(page, advice.pregnancy());
    caesarean(page, advice.caesarean());
    lookBack(page, advice.lookBack());
    redFlags(page, advice.pregnancy());
  }

  private static void whelping(Page page, @Nullable Whelping whelping, boolean bred) {
    if (whelping == null) {
      return;
    }
    page.heading(bred ? Section.WHELPING_ONCE_BRED : Section.WHELPING);
    LocalDate median = whelping.median().toLocalDate();
    page.indented(
        2,
        TEXTS.say(
            whelping.countedFrom().equals("dioestrus")
                ? "whelping.from-shift"
                : "whelping.from-ovulation",
            LocalWords.day(median),
            LocalWords.day(whelping.p05().toLocalDate()),
            LocalWords.day(whelping.p95().toLocalDate())));
    whelping.notes().forEach(note -> page.hanging(2, "-", note + "."));
  }

  private static void milestones(Page page, Advice advice) {
    Pregnancy pregnancy = advice.pregnancy();
    if (pregnancy == null) {
      return;
    }
    List<Milestone> ahead =
        pregnancy.milestones().stream()
            .filter(milestone -> !milestone.to().isBefore(advice.asOf()))
            .toList();
    if (ahead.isEmpty()) {
      return;
    }
    page.heading(Section.PREGNANCY);
    for (Milestone milestone : ahead) {
      page.hanging(
          2,
          "-",
          TEXTS.say(
              "pregnancy.milestone",
              LocalWords.shortDay(milestone.from().toLocalDate()),
              LocalWords.shortDay(milestone.to().toLocalDate()),
              milestone.title()));
    }
    page.indented(2, TEXTS.say("pregnancy.counted"));
  }

  private static void happened(Page page, @Nullable Pregnancy pregnancy) {
    if (pregnancy == null || pregnancy.happened().isEmpty()) {
      return;
    }
    page.heading(Section.HAPPENED);
    for (Happened one : pregnancy.happened()) {
      page.hanging(
          2,
          "-",
          TEXTS.say(
              "pregnancy.happened",
              LocalWords.shortDay(one.on()),
              one.daysAfterOvulation(),
              one.text()));
    }
  }

  private static void caesarean(Page page, @Nullable Caesarean caesarean) {
    if (caesarean == null) {
      return;
    }
    page.heading(Section.CAESAREAN);
    for (Caesarean.Day day : caesarean.days()) {
      page.hanging(
          2,
          "-",
          TEXTS.say(
              "caesarean.day",
              LocalWords.shortDay(day.day()),
              day.daysAfterOvulation(),
              day.text(),
              Shares.inHundred(day.chanceEarly()),
              Shares.inHundred(day.chanceBegun())));
    }
    page.indented(2, caesarean.text() + ".");
  }

  private static void lookBack(Page page, @Nullable LookBack lookBack) {
    if (lookBack == null) {
      return;
    }
    page.heading(Section.LOOKING_BACK);
    page.indented(
        2,
        TEXTS.say(
            "back.whelped",
            LocalWords.day(lookBack.whelpedOn()),
            LocalWords.day(lookBack.median().toLocalDate()),
            LocalWords.day(lookBack.p05().toLocalDate()),
            LocalWords.day(lookBack.p95().toLocalDate())));
    page.indented(2, lookBack.text() + ".");
    page.indented(
        2,
        TEXTS.say(
            "back.ovulated",
            LocalWords.about(lookBack.ovulation().median()),
            LocalWords.about(lookBack.ovulation().p05()),
            LocalWords.about(lookBack.ovulation().p95())));
  }

  private static void redFlags(Page page, @Nullable Pregnancy pregnancy) {
    if (pregnancy == null) {
      return;
    }
    String kind = "";
    for (RedFlag flag : pregnancy.redFlags()) {
      if (!flag.kind().equals(kind)) {
        kind = flag.kind();
        page.heading(Section.RED_FLAGS.getOrDefault(kind, kind));
      }
      page.hanging(2, "-", flag.text() + ".");
    }
  }
}
