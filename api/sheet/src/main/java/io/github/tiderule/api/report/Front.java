package io.github.tiderule.api.report;

import io.github.tiderule.api.report.text.Section;
import io.github.tiderule.api.report.text.Shares;
import io.github.tiderule.api.report.text.Telling;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.advice.Action;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.Amount;
import io.github.tiderule.engine.advice.Bred;
import io.github.tiderule.engine.advice.InseminationSheet;
import io.github.tiderule.engine.advice.Plan;
import io.github.tiderule.engine.advice.Warning;
import io.github.tiderule.engine.advice.course.SeasonCourse;
import io.github.tiderule.rules.conclusion.CourseKind;
import io.github.tiderule.rules.conclusion.care.CautionLevel;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * What is read first of an answer, in words and in this order, wherever it is read: on a terminal,
 * a page and paper.
 *
 * @param headline what to do
 * @param then what follows it
 * @param grave what stops all timing, or sends to a vet
 * @param questions what must be answered first
 * @param plan when to breed with what share of eggs, what is bred already, the semen in hand
 * @param due what is due, soonest first
 * @param sure when she ovulates, and how sure that is
 * @param values what her values do; absent where none tells
 * @param until when the answer is to be asked for again
 */
public record Front(
    String headline,
    List<String> then,
    List<Section.Line> grave,
    List<Section.Line> questions,
    List<Section.Line> plan,
    List<Due> due,
    String sure,
    @Nullable String values,
    String until) {

  private static final Texts TEXTS = Texts.ofReports();

  /** Of an answer. */
  public static Front of(CycleRecord cycle, Advice advice, Telling telling) {
    SeasonCourse course = advice.timing().seasonCourse();
    return new Front(
        telling.say(advice.action().headline()),
        telling.say(advice.action().then()),
        advice.cautions().stream()
            .filter(caution -> caution.level() != CautionLevel.CARE)
            .map(one -> line(TEXTS.say("now." + one.level().word()), telling.say(one.text())))
            .toList(),
        advice.questions().stream()
            .map(query -> line(TEXTS.say("screen.question"), telling.say(query.text())))
            .toList(),
        plan(advice, telling),
        DueList.of(advice, telling),
        Certainties.inDays(cycle, advice, telling.words()),
        course == null || isPast(course, advice) ? null : telling.say(course.text()) + ".",
        telling.words().shortMoment(advice.validUntil()));
  }

  /** Once she is bred and no day is left, only what is wrong with her values is still of use. */
  private static boolean isPast(SeasonCourse course, Advice advice) {
    return advice.breeding().bred() != null
        && advice.breeding().days().isEmpty()
        && course.kind().compareTo(CourseKind.STANDING_STILL) >= 0;
  }

  private static Section.Line line(String mark, String words) {
    return new Section.Line(0, mark, words);
  }

  private static List<Section.Line> plan(Advice advice, Telling telling) {
    List<Section.Line> lines = new ArrayList<>();
    Bred bred = advice.breeding().bred();
    if (bred != null) {
      lines.add(
          line(
              TEXTS.say("screen.bred"),
              Shares.expected(bred.eggShare()) + " " + telling.say(bred.text())));
    }
    Plan plan = advice.breeding().plan();
    if (plan != null) {
      boolean vet = advice.action().now() == Action.Now.VET;
      lines.add(
          line(
              "",
              TEXTS.say(
                  vet ? "screen.plan.vet" : "screen.plan",
                  plan.at().stream()
                      .map(at -> dose(advice, telling, at))
                      .collect(Collectors.joining(TEXTS.say("screen.and"))),
                  Shares.expected(plan.eggShare()))));
    }
    semen(lines, advice.breeding().insemination(), telling);
    return lines;
  }

  private static String dose(Advice advice, Telling telling, OffsetDateTime at) {
    return advice.breeding().days().stream()
        .filter(day -> DaysTable.holds(day, at))
        .findFirst()
        .map(
            day ->
                telling.words().shortDay(day.day())
                    + " "
                    + telling.words().window(day.from(), day.to()))
        .orElseGet(() -> telling.words().shortMoment(at));
  }

  private static void semen(
      List<Section.Line> lines, @Nullable InseminationSheet sheet, Telling telling) {
    if (sheet == null) {
      return;
    }
    for (Warning finding : sheet.findings()) {
      if (finding.level() != CautionLevel.CARE) {
        lines.add(line(TEXTS.say("screen.semen"), telling.say(finding.text())));
      }
    }
    Amount usable = sheet.usable();
    if (usable != null) {
      lines.add(
          line(
              TEXTS.say("screen.semen"),
              TEXTS.say(
                  "screen.semen.usable",
                  telling.sayWithin(usable.figures()),
                  TEXTS.word("amount", usable.unit()))));
    }
  }
}
