package io.github.tiderule.api.report;

import io.github.tiderule.api.report.text.Page;
import io.github.tiderule.api.report.text.Section;
import io.github.tiderule.api.report.text.SectionKind;
import io.github.tiderule.api.report.text.Shares;
import io.github.tiderule.api.report.text.Telling;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.api.words.Words;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.advice.Action;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.Bred;
import io.github.tiderule.engine.advice.Commitment;
import io.github.tiderule.engine.advice.NextTest;
import io.github.tiderule.engine.advice.Plan;
import io.github.tiderule.engine.advice.Warning;
import io.github.tiderule.engine.advice.reasoning.LocalProtocol;
import io.github.tiderule.engine.advice.reasoning.Query;
import io.github.tiderule.rules.conclusion.TestKind;
import io.github.tiderule.rules.conclusion.care.CautionLevel;
import io.github.tiderule.rules.sentence.Sentence;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * The plan for a breeder: what to do now, which days and why, how sure, what next, and what would
 * change it. Plain text of at most 80 columns, without colour.
 */
public final class AdviceReport {

  private static final Texts TEXTS = Texts.ofReports();

  private static final int HASH_LETTERS = 12;

  private final CycleRecord cycle;
  private final Advice advice;
  private final Page page;
  private final Telling telling;
  private final Words words;

  private AdviceReport(CycleRecord cycle, Advice advice, Telling telling) {
    this.cycle = cycle;
    this.advice = advice;
    this.page = new Page(telling);
    this.telling = telling;
    this.words = telling.words();
  }

  /** The report on a cycle for a terminal, each line ended by a line feed. */
  public static String text(CycleRecord cycle, Advice advice) {
    return new AdviceReport(cycle, advice, Telling.onTerminal(cycle)).written().toString();
  }

  /** The same in sections, to be set on paper or on a page. */
  public static List<Section> sections(CycleRecord cycle, Advice advice, Telling telling) {
    return new AdviceReport(cycle, advice, telling).written().sections();
  }

  private Page written() {
    title();
    now();
    ValuesSection.write(page, advice.timing().seasonCourse());
    plan();
    SheetSection.write(page, advice.breeding().insemination());
    BeforeSeasonSection.write(page, advice.course().beforeSeason());
    DaysTable.write(page, advice.breeding().days());
    Certainties.write(page, cycle, advice);
    nextTest();
    questions();
    Doubts.writeNotes(page, advice);
    PregnancySection.write(page, advice);
    changes();
    Certainties.writeWeights(page, advice.reasoning().influence());
    Doubts.writeDisagreements(page, advice);
    cautions();
    foot();
    return page;
  }

  private void title() {
    String name = cycle.female().name();
    String id = advice.femaleId();
    page.line(TEXTS.say("plan.title", Telling.who(name, id)));
    page.line(TEXTS.say("report.moment", words.moment(advice.asOf()), cycle.zone()));
  }

  private void now() {
    page.heading(SectionKind.NOW);
    page.indented(2, advice.action().headline());
    advice.action().then().forEach(next -> page.hanging(2, "-", next));
    grave(page, 2, advice);
  }

  /** What stops all timing, or sends to a vet. */
  static void grave(Page page, int columns, Advice advice) {
    for (Warning caution : advice.cautions()) {
      if (caution.level() != CautionLevel.CARE) {
        page.hanging(columns, TEXTS.say("now." + caution.level().word()), caution.text());
      }
    }
  }

  private void plan() {
    page.heading(SectionKind.PLAN);
    bred(advice.breeding().bred());
    Plan plan = advice.breeding().plan();
    if (plan == null) {
      if (advice.breeding().bred() == null) {
        page.indented(
            2, TEXTS.say(advice.action().then().isEmpty() ? "plan.none" : "plan.none-yet"));
      }
      return;
    }
    if (advice.action().now() == Action.Now.VET) {
      page.indented(2, TEXTS.say("plan.vet-first"));
    }
    for (int i = 0; i < plan.at().size(); i++) {
      page.hanging(
          2,
          (i + 1) + ".",
          DaysTable.momentInWindow(plan.at().get(i), advice.breeding().days(), words));
    }
    String together =
        advice.breeding().bred() != null
            ? "plan.share.left"
            : plan.at().size() == 1 ? "plan.share.one" : "plan.share.many";
    page.indented(
        2,
        TEXTS.say(
            together, Shares.inHundred(plan.eggShare().mean()), Shares.unlucky(plan.eggShare())));
    for (Commitment commitment : plan.commitments()) {
      boolean now = !commitment.by().isAfter(advice.asOf());
      page.indented(
          2,
          now
              ? TEXTS.say("plan.commit.now", telling.say(commitment.text()))
              : TEXTS.say(
                  "plan.commit.by", telling.say(commitment.text()), words.moment(commitment.by())));
    }
    if (plan.forecast() != null) {
      page.hanging(2, TEXTS.say("plan.forecast"), plan.forecast().text());
    }
    plan.notes().forEach(note -> page.indented(2, note));
    if (!plan.alternatives().isEmpty()) {
      page.indented(2, TEXTS.say("plan.others"));
      for (Plan.Alternative other : plan.alternatives()) {
        page.hanging(
            2,
            "-",
            TEXTS.say(
                "plan.other",
                telling.moments(other.at()),
                Shares.inHundred(other.eggShare().mean()),
                telling.capital(other.note())));
      }
    }
  }

  private void bred(@Nullable Bred bred) {
    if (bred != null) {
      page.indented(
          2,
          TEXTS.say(
              bred.count() == 1 ? "plan.done.one" : "plan.done.many",
              Shares.inHundred(bred.eggShare().mean()),
              Shares.unlucky(bred.eggShare()),
              telling.say(bred.text())));
    }
  }

  private void nextTest() {
    page.heading(SectionKind.NEXT_TEST);
    NextTest test = advice.testing().next();
    if (test == null) {
      Sentence because = advice.testing().noTestBecause();
      page.indented(
          2,
          because != null
              ? TEXTS.say("test.none-because", telling.say(because))
              : TEXTS.say(advice.breeding().plan() == null ? "test.none-now" : "test.none-needed"));
    } else {
      page.indented(
          2,
          TEXTS.say(
              "test.when",
              TEXTS.word("test.kind", test.kind()),
              words.moment(test.at()),
              words.moment(test.resultAt())));
      if (!test.also().isEmpty()) {
        page.indented(2, TEXTS.say("test.lh-too"));
      }
      boolean decides =
          advice.action().now() == Action.Now.TEST && !advice.action().then().isEmpty();
      if (decides) {
        page.indented(2, TEXTS.say("test.decides"));
      } else if (test.gain() < 0.005 && test.kind() != TestKind.LH) {
        page.indented(
            2,
            TEXTS.say(
                (test.kind() == TestKind.CYTOLOGY ? "test.to-date" : "test.to-prove")
                    + (advice.breeding().plan() == null || changedByNext() ? "" : ".no-change")));
      }
      if (test.gain() >= 0.005) {
        page.indented(2, TEXTS.say("test.gain", Shares.number(test.gain())));
      }
    }
    page.indented(2, TEXTS.say("test.ask-again", words.moment(advice.validUntil())));
  }

  /** Whether a value of the next test is told that changes the days. */
  private boolean changedByNext() {
    return advice.testing().wouldChange().stream()
        .anyMatch(change -> change.observation().equals("next"));
  }

  private void questions() {
    if (advice.questions().isEmpty()) {
      return;
    }
    page.heading(SectionKind.QUESTIONS);
    for (Query query : advice.questions()) {
      page.hanging(2, "-", query.text());
      page.indented(4, TEXTS.say("question.about", telling.observation(query.about())));
      for (Query.Reading reading : query.readings()) {
        page.hanging(4, TEXTS.say("question.reading", reading.unit()), reading.meaning());
      }
    }
  }

  private void changes() {
    if (advice.testing().wouldChange().isEmpty()) {
      return;
    }
    page.heading(SectionKind.WOULD_CHANGE);
    advice
        .testing()
        .wouldChange()
        .forEach(
            change -> {
              page.hanging(2, "-", change.ifThen());
              page.indented(
                  4,
                  change.plan().isEmpty()
                      ? TEXTS.say("change.no-plan")
                      : TEXTS.say("change.plan", telling.moments(change.plan())));
            });
  }

  private void cautions() {
    Set<Sentence> said = SheetSection.said(advice.breeding().insemination());
    List<Sentence> care =
        advice.cautions().stream()
            .filter(caution -> caution.level() == CautionLevel.CARE)
            .map(Warning::text)
            .filter(text -> !said.contains(text))
            .toList();
    if (!care.isEmpty()) {
      page.heading(SectionKind.CAUTIONS);
      page.bullets(2, care);
    }
  }

  private void foot() {
    page.gap();
    LocalProtocol overlay = advice.stamp().overlay();
    if (overlay != null) {
      page.line(
          TEXTS.say(
              "stamp.local",
              overlay.name(),
              TEXTS.count("stamp.local.changes", overlay.changes().size())));
    }
    String rules = advice.stamp().rules().replaceFirst("^sha256:", "");
    String hash = rules.substring(0, Math.min(HASH_LETTERS, rules.length()));
    page.line(
        TEXTS.say("stamp.short", advice.stamp().engine(), hash) + " " + TEXTS.say("stamp.no-vet"));
  }
}
