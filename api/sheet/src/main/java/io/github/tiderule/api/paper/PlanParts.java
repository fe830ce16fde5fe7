package io.github.tiderule.api.paper;

import io.github.tiderule.api.report.AdviceReport;
import io.github.tiderule.api.report.Front;
import io.github.tiderule.api.report.text.Section;
import io.github.tiderule.api.report.text.SectionKind;
import io.github.tiderule.api.report.text.Shares;
import io.github.tiderule.api.report.text.Telling;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.BreedingDay;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What the plan says, in parts that both sheets share. */
final class PlanParts {

  private static final Texts TEXTS = Texts.ofReports();

  /** More than there are: a red flag is never left out for want of room. */
  private static final int MOST_FLAGS = 16;

  private final Advice advice;
  private final Telling telling;
  private final List<Section> sections;
  private final Front front;

  PlanParts(CycleRecord cycle, Advice advice) {
    this.advice = advice;
    this.telling = Telling.onPaper(cycle);
    this.sections = AdviceReport.sections(cycle, advice, telling);
    this.front = Front.of(cycle, advice, telling);
  }

  private Section section(SectionKind kind) {
    return Section.of(sections, kind);
  }

  /** The title of the report and the moment it is for. */
  void title(Html html, Room room) {
    html.title(section(SectionKind.HEAD).texts().get(0));
    moment(html, room);
  }

  /** The moment it is for, and the zone of its times. */
  void moment(Html html, Room room) {
    section(SectionKind.HEAD).texts().stream()
        .skip(1)
        .forEach(line -> html.paragraph("quiet", line));
  }

  /** What to do now, and what calls for a vet at once. */
  void now(Html html, Room room) {
    List<String> lines = section(SectionKind.NOW).texts();
    html.open("now").paragraph("", lines.get(0));
    int most = room.most(12, 12, 10, 8, 6, 5, 4, 2);
    lines.stream().skip(1).limit(most).forEach(line -> html.paragraph("alarm", line));
    html.left("alarm", lines.size() - 1 - most).close();
  }

  /** The answer first: what to do, when to breed with what share of eggs, and what is grave. */
  void answer(Html html, Room room) {
    html.open("now").paragraph("", front.headline());
    List<String> follows = new ArrayList<>(front.then());
    front.plan().forEach(line -> follows.add(line.text()));
    int most = room.most(12, 10, 8, 6, 5, 4, 3, 1);
    follows.stream().limit(most).forEach(line -> html.paragraph("then", line));
    html.left("more", follows.size() - most);
    // what is grave is never cut
    html.open("grave")
        .whole(new Section(SectionKind.NOW, "", front.grave()), false)
        .close()
        .close();
  }

  /** What is due, soonest first. */
  void due(Html html, Room room) {
    int most = room.most(8, 7, 6, 5, 4, 3, 2, 0);
    if (!front.due().isEmpty() && most > 0) {
      html.heading(TEXTS.say("screen.due"));
      front.due().stream()
          .limit(most)
          .forEach(one -> html.paragraph("", TEXTS.say("paper.due", one.when(), one.what())));
      html.left("more", front.due().size() - most);
    }
  }

  /** How sure it is, and what her values do. */
  void known(Html html, Room room) {
    html.paragraph("", TEXTS.say("screen.sure") + " " + front.sure());
    if (front.values() != null && room.most(1, 1, 1, 1, 1, 1, 1, 0) > 0) {
      html.paragraph("", TEXTS.say("screen.values") + " " + front.values());
    }
  }

  /** What her values do. */
  void values(Html html, Room room) {
    part(html, SectionKind.VALUES, 2);
  }

  /** What calls for a vet at once, without what to do now. */
  void alarms(Html html, Room room) {
    List<String> lines = section(SectionKind.NOW).texts();
    if (lines.size() > 1) {
      html.open("now");
      lines.stream().skip(1).forEach(line -> html.paragraph("alarm", line));
      html.close();
    }
  }

  /** The plan with its windows, eggs and deadlines. */
  void plan(Html html, Room room) {
    html.heading(SectionKind.PLAN.heading())
        .lines(section(SectionKind.PLAN), room.most(14, 12, 10, 9, 8, 7, 6, 4));
  }

  /** When to test next, or why not. */
  void nextTest(Html html, Room room) {
    html.heading(SectionKind.NEXT_TEST.heading())
        .lines(section(SectionKind.NEXT_TEST), room.most(6, 6, 6, 6, 6, 5, 4, 2));
  }

  /** Questions that must be answered first. */
  void questions(Html html, Room room) {
    part(html, SectionKind.QUESTIONS, room.most(14, 12, 10, 8, 7, 6, 5, 3));
  }

  /** How sure the estimate is. */
  void howSure(Html html, Room room) {
    part(html, SectionKind.HOW_SURE, room.most(5, 5, 5, 5, 5, 4, 3, 2));
  }

  /** How results are taken that are not simply taken. */
  void howTaken(Html html, Room room) {
    bullets(html, SectionKind.TAKEN, room.most(12, 10, 8, 6, 5, 4, 3));
  }

  /** Semen, steps and volumes of the day of insemination. */
  void insemination(Html html, Room room) {
    part(html, SectionKind.SHEET, room.most(60, 56, 52, 48, 44, 40, 36, 12));
  }

  /** The same with every step, however many there are. */
  void wholeInsemination(Html html, Room room) {
    html.lines(section(SectionKind.SHEET), Integer.MAX_VALUE);
  }

  /** The days of whelping, and what is due until then. */
  void whelping(Html html, Room room) {
    part(html, SectionKind.WHELPING_IF, room.most(3, 3, 3, 3, 3, 3, 2, 1));
    part(html, SectionKind.WHELPING, room.most(3, 3, 3, 3, 3, 3, 2, 1));
    part(html, SectionKind.PREGNANCY, room.most(10, 10, 9, 8, 7, 6, 5, 2));
    part(html, SectionKind.HAPPENED, room.most(10, 9, 8, 7, 6, 5, 4, 0));
    part(html, SectionKind.CAESAREAN, room.most(10, 9, 8, 7, 6, 5, 4, 1));
    part(html, SectionKind.LOOKING_BACK, room.most(3, 3, 3, 3, 2, 2, 1, 0));
  }

  /** When the next season is expected, and what to see to before it. */
  void beforeSeason(Html html, Room room) {
    part(html, SectionKind.BEFORE_SEASON, room.most(24, 18, 12, 8, 5, 3, 1, 0));
  }

  /** Cautions, those of the season first. */
  void cautions(Html html, Room room) {
    bullets(html, SectionKind.CAUTIONS, room.most(14, 11, 9, 7, 6, 5, 4, 3));
  }

  /** When to call a vet. */
  void vet(Html html, Room room) {
    html.heading(TEXTS.say("paper.vet")).paragraph("", TEXTS.say("paper.vet.same-day"));
    if (advice.course().pregnancy() != null) {
      List<String> flags =
          advice.course().pregnancy().redFlags().stream()
              .map(one -> telling.say(one.text()))
              .toList();
      html.list("alarms", flags, MOST_FLAGS);
    }
  }

  /** Every day with its rank and verdict. */
  void days(Html html, Room room) {
    List<List<String>> rows = new ArrayList<>();
    advice.breeding().days().stream()
        .limit(room.most(10, 9, 8, 7, 6, 5, 4))
        .forEach(day -> rows.add(row(day)));
    if (!rows.isEmpty()) {
      html.table(
          TEXTS.say("paper.days"),
          List.of(
              "",
              TEXTS.say("days.day"),
              TEXTS.say("days.time"),
              TEXTS.say("days.verdict"),
              TEXTS.say("days.eggs"),
              TEXTS.say("paper.days.rules")),
          rows,
          rows.size());
    }
  }

  private List<String> row(BreedingDay day) {
    return List.of(
        day.rank() + ".",
        telling.words().day(day.day()),
        telling.words().window(day.from(), day.to()),
        day.verdict().word().toLowerCase(Locale.ROOT),
        Shares.number(day.eggShare().mean()) + " (" + Shares.number(day.eggShare().unlucky()) + ")",
        String.join(", ", day.reasons().stream().map(reason -> reason.rule()).distinct().toList()));
  }

  /** Which engine and which rules said so. */
  void stamp(Html html, Room room) {
    html.open("stamp").lines(section(SectionKind.FOOT), 4).close();
  }

  private void bullets(Html html, SectionKind kind, int most) {
    Section section = section(kind);
    if (!section.lines().isEmpty()) {
      html.heading(section.heading()).list("", section.texts(), most);
    }
  }

  private void part(Html html, SectionKind kind, int most) {
    Section section = section(kind);
    if (!section.lines().isEmpty()) {
      html.heading(section.heading()).lines(section, most);
    }
  }
}
