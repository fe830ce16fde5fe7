package io.github.tiderule.api.report;

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
import org.jspecify.annotations.Nullable;

/**
 * What changed since last time, for a breeder: the plan first, an earlier one that no longer holds
 * by name, then what moved and why. Plain text of at most 80 columns.
 */
public final class ChangesReport {

  private final Told before;
  private final Told after;
  private final AdviceChange change;
  private final Page page = new Page();

  private ChangesReport(Told before, Told after, AdviceChange change) {
    this.before = before;
    this.after = after;
    this.change = change;
  }

  /** The report, each line ended by a line feed. */
  public static String text(Told before, Told after, AdviceChange change) {
    ChangesReport report = new ChangesReport(before, after, change);
    report.write();
    return report.page.toString();
  }

  /** What the report says below its headings. */
  public static List<Section> sections(Told before, Told after, AdviceChange change) {
    ChangesReport report = new ChangesReport(before, after, change);
    report.write();
    return report.page.sections();
  }

  private void write() {
    String name = after.cycle().female().name();
    String id = change.after().femaleId();
    page.line("What changed for " + (name != null ? name : id != null ? id : "an unnamed female"));
    page.line(
        "from "
            + LocalWords.moment(change.before().asOf())
            + " to "
            + LocalWords.moment(change.after().asOf())
            + "; all times are for "
            + after.cycle().zone());
    if (change.nothingMoved() && change.observations().isEmpty()) {
      page.gap();
      page.line("Nothing: what to do, the plan and the estimate are as they were.");
    }
    action();
    plan();
    ovulation();
    test();
    observations();
    rules(Section.RULES_NEW, true);
    rules(Section.RULES_GONE, false);
    cautions("New cautions", change.cautionsAdded());
    cautions("Cautions that are gone", change.cautionsGone());
    if (change.rulesRevised()) {
      page.heading("The rules themselves");
      page.indented(2, "The two answers come from different rules, parameters or engines.");
    }
  }

  private void action() {
    page.heading("What to do now");
    page.indented(2, change.after().action().headline());
    if (!change.before().action().headline().equals(change.after().action().headline())) {
      page.indented(2, "Before, it was: " + change.before().action().headline());
    }
  }

  private void plan() {
    PlanChange plan = change.plan();
    page.heading("The plan");
    page.indented(2, outcome(plan));
    for (DoseChange dose : plan.doses()) {
      page.hanging(2, "-", LocalWords.moment(dose.at()) + ": " + fate(dose) + ".");
    }
    for (OffsetDateTime at : plan.added()) {
      page.hanging(2, "-", LocalWords.moment(at) + ": new.");
    }
    shares(plan.before(), plan.after());
  }

  private static String outcome(PlanChange plan) {
    return switch (plan.outcome()) {
      case NONE -> "There was none, and there is none.";
      case MADE -> "There was none; now there is one.";
      case STANDS -> "It stands.";
      case REPLACED -> "The earlier plan is withdrawn; another takes its place.";
      case WITHDRAWN -> "The earlier plan is withdrawn, and none takes its place.";
      case DONE -> "It was carried out; nothing more is planned.";
    };
  }

  private static String fate(DoseChange dose) {
    return switch (dose.fate()) {
      case STANDS -> "stands";
      case DONE -> "done";
      case PASSED -> "has passed, and no breeding is in the file";
      case WITHDRAWN -> "withdrawn; tell whoever was told of it";
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
            ? "It should meet " + share + " of her eggs."
            : "Eggs met: "
                + Shares.number(was.eggShare().mean())
                + " in 100 then, "
                + Shares.number(is.eggShare().mean())
                + " now.");
    OffsetDateTime orderBy = is.orderBy();
    if (orderBy != null && (was == null || !orderBy.equals(was.orderBy()))) {
      page.indented(2, "Order by " + LocalWords.moment(orderBy) + ", at the latest.");
    }
  }

  private void ovulation() {
    OvulationChange moved = change.ovulation();
    OffsetDateTime was = moved.before();
    OffsetDateTime is = moved.after();
    if (was == null && is == null) {
      return;
    }
    page.heading("Ovulation");
    if (was == null || is == null) {
      page.indented(
          2,
          is == null
              ? "Nothing can be said of it any more."
              : "Nothing could be said of it then; now it lies around "
                  + LocalWords.about(is)
                  + ".");
      return;
    }
    double shift = Objects.requireNonNullElse(moved.shiftHours(), 0.0);
    page.indented(
        2,
        "Its middle "
            + (Math.abs(shift) < 0.5
                ? "stays at " + LocalWords.about(is)
                : "moved "
                    + Shares.hours(shift)
                    + (shift < 0 ? " earlier" : " later")
                    + ", from "
                    + LocalWords.about(was)
                    + " to "
                    + LocalWords.about(is))
            + ".");
    double wide = Objects.requireNonNullElse(moved.widthBeforeHours(), 0.0);
    double now = Objects.requireNonNullElse(moved.widthAfterHours(), 0.0);
    page.indented(
        2,
        "The 9-in-10 span was "
            + Shares.hours(wide)
            + " and is "
            + Shares.hours(now)
            + ", "
            + Certainties.width(now - wide)
            + ".");
  }

  private void test() {
    NextTest was = change.before().nextTest();
    NextTest is = change.after().nextTest();
    if (Objects.equals(was, is)) {
      return;
    }
    page.heading("Next test");
    page.indented(
        2,
        (is == null ? "None" : is.kind() + ", " + LocalWords.moment(is.at()))
            + ". Before, it was: "
            + (was == null ? "none" : was.kind() + ", " + LocalWords.moment(was.at()))
            + ".");
  }

  private void observations() {
    page.heading("Because of");
    if (change.observations().isEmpty()) {
      page.indented(
          2,
          change.nothingMoved()
              ? "No entry of the file differs."
              : "No entry of the file differs: what moved, moved because time went on.");
      return;
    }
    for (ObservationChange one : change.observations()) {
      boolean gone = one.kind() == ObservationChange.Kind.REMOVED;
      ObservationWords names = new ObservationWords(gone ? before.cycle() : after.cycle());
      page.hanging(2, "-", names.of(one.observation()) + ", " + kind(one) + ": " + effect(one));
    }
  }

  private static String kind(ObservationChange one) {
    return switch (one.kind()) {
      case ADDED -> "new";
      case CORRECTED -> "corrected";
      case REMOVED -> "no longer in the file";
      case NOW_USED -> "used now";
      case NO_LONGER_USED -> "no longer used";
    };
  }

  private static String effect(ObservationChange one) {
    Double shift = one.ovulationShiftHours();
    Double width = one.widthChangeHours();
    if (shift == null || width == null) {
      return "it does not date ovulation.";
    }
    return Certainties.shift(shift)
        + ", and it made the 9-in-10 span "
        + Certainties.width(width)
        + ".";
  }

  private void rules(String heading, boolean speaks) {
    List<RuleChange> rules =
        change.rules().stream().filter(rule -> rule.speaks() == speaks).toList();
    if (rules.isEmpty()) {
      return;
    }
    page.heading(heading);
    ObservationWords names = new ObservationWords(speaks ? after.cycle() : before.cycle());
    for (RuleChange rule : rules) {
      String from = rule.matched().isEmpty() ? "" : " From " + names.of(rule.matched()) + ".";
      page.hanging(2, "-", rule.rule() + ", " + rule.title() + "." + from);
    }
  }

  private void cautions(String heading, List<Warning> cautions) {
    if (!cautions.isEmpty()) {
      page.heading(heading);
      page.bullets(2, cautions.stream().map(Warning::text).toList());
    }
  }
}
