package io.github.tiderule.api.report;

import io.github.tiderule.api.report.text.Page;
import io.github.tiderule.api.report.text.Section;
import io.github.tiderule.api.report.text.SectionKind;
import io.github.tiderule.api.report.text.Shares;
import io.github.tiderule.api.report.text.Telling;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.api.words.Words;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.advice.NextTest;
import io.github.tiderule.engine.advice.Plan;
import io.github.tiderule.engine.advice.Warning;
import io.github.tiderule.engine.change.AdviceChange;
import io.github.tiderule.engine.change.DoseChange;
import io.github.tiderule.engine.change.ObservationChange;
import io.github.tiderule.engine.change.OvulationChange;
import io.github.tiderule.engine.change.PlanChange;
import io.github.tiderule.engine.change.RuleChange;
import io.github.tiderule.engine.change.Told;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Objects;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * What changed since last time, for a breeder: the plan first, an earlier one that no longer holds
 * by name, then what moved and why. Plain text of at most 80 columns.
 */
public final class ChangesReport {

  private static final Texts TEXTS = Texts.ofReports();

  private final Told after;
  private final AdviceChange change;
  private final Telling earlier;
  private final Telling telling;
  private final Words words;
  private final Page page;

  private ChangesReport(
      Told before, Told after, AdviceChange change, Function<CycleRecord, Telling> telling) {
    this.after = after;
    this.change = change;
    this.earlier = telling.apply(before.cycle());
    this.telling = telling.apply(after.cycle());
    this.words = this.telling.words();
    this.page = new Page(this.telling);
  }

  /** The report for a terminal, each line ended by a line feed. */
  public static String text(Told before, Told after, AdviceChange change) {
    ChangesReport report = new ChangesReport(before, after, change, Telling::onTerminal);
    report.write();
    return report.page.toString();
  }

  /**
   * The same in sections, to be set on a page.
   *
   * @param telling how each of the two seasons is told
   */
  public static List<Section> sections(
      Told before, Told after, AdviceChange change, Function<CycleRecord, Telling> telling) {
    ChangesReport report = new ChangesReport(before, after, change, telling);
    report.write();
    return report.page.sections();
  }

  private void write() {
    String name = after.cycle().female().name();
    String id = change.after().femaleId();
    page.line(TEXTS.say("changes.title", Telling.who(name, id)));
    page.line(
        TEXTS.say(
            "changes.moments",
            words.moment(change.before().asOf()),
            words.moment(change.after().asOf()),
            after.cycle().zone()));
    if (change.nothingMoved() && change.observations().isEmpty()) {
      page.gap();
      page.line(TEXTS.say("changes.nothing"));
    }
    action();
    plan();
    ovulation();
    test();
    observations();
    rules(SectionKind.RULES_NEW, true);
    rules(SectionKind.RULES_GONE, false);
    cautions(SectionKind.CAUTIONS_NEW, change.cautionsAdded());
    cautions(SectionKind.CAUTIONS_GONE, change.cautionsGone());
    if (change.rulesRevised()) {
      page.heading(SectionKind.RULES_REVISED);
      page.indented(2, TEXTS.say("changes.rules-differ"));
    }
  }

  private void action() {
    page.heading(SectionKind.NOW);
    page.indented(2, change.after().action().headline());
    if (!change.before().action().headline().equals(change.after().action().headline())) {
      page.indented(
          2, TEXTS.say("changes.before", earlier.sayWithin(change.before().action().headline())));
    }
  }

  private void plan() {
    PlanChange plan = change.plan();
    page.heading(SectionKind.PLAN);
    page.indented(2, outcome(plan));
    for (DoseChange dose : plan.doses()) {
      page.hanging(2, "-", TEXTS.say("changes.dose." + fate(dose), words.moment(dose.at())));
    }
    for (OffsetDateTime at : plan.added()) {
      page.hanging(2, "-", TEXTS.say("changes.dose.new", words.moment(at)));
    }
    shares(plan.before(), plan.after());
  }

  private static String outcome(PlanChange plan) {
    return switch (plan.outcome()) {
      case NONE -> TEXTS.say("changes.plan.none");
      case MADE -> TEXTS.say("changes.plan.made");
      case STANDS -> TEXTS.say("changes.plan.stands");
      case REPLACED -> TEXTS.say("changes.plan.replaced");
      case WITHDRAWN -> TEXTS.say("changes.plan.withdrawn");
      case DONE -> TEXTS.say("changes.plan.done");
    };
  }

  private static String fate(DoseChange dose) {
    return switch (dose.fate()) {
      case STANDS -> "stands";
      case DONE -> "done";
      case PASSED -> "passed";
      case WITHDRAWN -> "withdrawn";
    };
  }

  private void shares(@Nullable Plan was, @Nullable Plan is) {
    if (is == null) {
      return;
    }
    String share = Shares.inHundred(is.eggShare().mean());
    page.indented(
        2,
        was == null
            ? TEXTS.say("plan.share.one", share, "")
            : TEXTS.say(
                "changes.eggs",
                Shares.number(was.eggShare().mean()),
                Shares.number(is.eggShare().mean())));
    OffsetDateTime orderBy = is.orderBy();
    if (orderBy != null && (was == null || !orderBy.equals(was.orderBy()))) {
      page.indented(2, TEXTS.say("changes.order-by", words.moment(orderBy)));
    }
  }

  private void ovulation() {
    OvulationChange moved = change.ovulation();
    OffsetDateTime was = moved.before();
    OffsetDateTime is = moved.after();
    if (was == null && is == null) {
      return;
    }
    page.heading(SectionKind.OVULATION_MOVED);
    if (was == null || is == null) {
      page.indented(
          2,
          is == null
              ? TEXTS.say("changes.ovulation.gone")
              : TEXTS.say("changes.ovulation.new", words.about(is)));
      return;
    }
    double shift = Objects.requireNonNullElse(moved.shiftHours(), 0.0);
    page.indented(
        2,
        Math.abs(shift) < 0.5
            ? TEXTS.say("changes.ovulation.stays", words.about(is))
            : TEXTS.say(
                shift < 0 ? "changes.ovulation.earlier" : "changes.ovulation.later",
                Shares.hours(shift),
                words.about(was),
                words.about(is)));
    double wide = Objects.requireNonNullElse(moved.widthBeforeHours(), 0.0);
    double now = Objects.requireNonNullElse(moved.widthAfterHours(), 0.0);
    page.indented(
        2,
        TEXTS.say(
            "changes.span", Shares.hours(wide), Shares.hours(now), Certainties.width(now - wide)));
  }

  private void test() {
    NextTest was = change.before().testing().next();
    NextTest is = change.after().testing().next();
    if (Objects.equals(was, is)) {
      return;
    }
    page.heading(SectionKind.NEXT_TEST);
    page.indented(
        2,
        (is == null ? TEXTS.say("changes.test.none") : words(is) + ".")
            + " "
            + TEXTS.say(
                "changes.before",
                was == null ? TEXTS.say("changes.test.none-before") : words(was) + "."));
  }

  private String words(NextTest test) {
    return TEXTS.word("test.kind", test.kind()) + ", " + words.moment(test.at());
  }

  private void observations() {
    page.heading(SectionKind.BECAUSE);
    if (change.observations().isEmpty()) {
      page.indented(
          2,
          change.nothingMoved() ? TEXTS.say("changes.no-entry") : TEXTS.say("changes.time-alone"));
      return;
    }
    for (ObservationChange one : change.observations()) {
      boolean gone = one.kind() == ObservationChange.Kind.REMOVED;
      Telling names = gone ? earlier : telling;
      page.hanging(
          2,
          "-",
          TEXTS.say(
              "changes.entry." + kind(one), names.observation(one.observation()), effect(one)));
    }
  }

  private static String kind(ObservationChange one) {
    return switch (one.kind()) {
      case ADDED -> "new";
      case CORRECTED -> "corrected";
      case REMOVED -> "removed";
      case NOW_USED -> "now-used";
      case NO_LONGER_USED -> "unused";
    };
  }

  private static String effect(ObservationChange one) {
    Double shift = one.ovulationShiftHours();
    Double width = one.widthChangeHours();
    if (shift == null || width == null) {
      return TEXTS.say("changes.no-effect");
    }
    return TEXTS.say("changes.effect", Certainties.shift(shift), Certainties.width(width));
  }

  private void rules(SectionKind heading, boolean speaks) {
    List<RuleChange> rules =
        change.rules().stream().filter(rule -> rule.speaks() == speaks).toList();
    if (rules.isEmpty()) {
      return;
    }
    page.heading(heading);
    Telling names = speaks ? telling : earlier;
    for (RuleChange rule : rules) {
      String from =
          rule.matched().isEmpty()
              ? ""
              : " " + TEXTS.say("changes.from", names.observations(rule.matched()));
      page.hanging(2, "-", rule.rule() + ", " + rule.title() + "." + from);
    }
  }

  private void cautions(SectionKind heading, List<Warning> cautions) {
    if (!cautions.isEmpty()) {
      page.heading(heading);
      page.bullets(2, cautions.stream().map(Warning::text).toList());
    }
  }
}
