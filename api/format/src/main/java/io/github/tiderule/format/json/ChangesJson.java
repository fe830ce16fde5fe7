package io.github.tiderule.format.json;

import io.github.tiderule.engine.advice.Action;
import io.github.tiderule.engine.advice.EggShare;
import io.github.tiderule.engine.advice.NextTest;
import io.github.tiderule.engine.advice.Plan;
import io.github.tiderule.engine.advice.Warning;
import io.github.tiderule.engine.change.AdviceChange;
import io.github.tiderule.engine.change.PlanChange;
import io.github.tiderule.rules.sentence.Phrasing;
import java.util.List;

/** What changed between two answers as a JSON document, schema {@code tiderule/changes/1}. */
public final class ChangesJson {

  /** The name and version of the document. */
  public static final String SCHEMA = "tiderule/changes/1";

  private static final int SHARE_DECIMALS = 4;
  private static final int HOUR_DECIMALS = 1;

  private final Document json;

  private ChangesJson(Document json) {
    this.json = json;
  }

  /** The document, with a line feed at its end. */
  public static String text(AdviceChange change, Layout layout) {
    return Document.text(layout, json -> new ChangesJson(json).change(change));
  }

  private void change(AdviceChange change) {
    json.text("schema", SCHEMA)
        .text("femaleId", change.after().femaleId())
        .instant("from", change.before().asOf())
        .instant("to", change.after().asOf())
        .flag("rulesRevised", change.rulesRevised())
        .flag("nothingMoved", change.nothingMoved())
        .object(
            "action",
            change,
            one ->
                json.object("before", one.before().action(), this::action)
                    .object("after", one.after().action(), this::action))
        .object("plan", change.plan(), this::plan)
        .object(
            "ovulation",
            change.ovulation(),
            moved ->
                json.instant("before", moved.before())
                    .instant("after", moved.after())
                    .figure("shiftHours", moved.shiftHours(), HOUR_DECIMALS)
                    .figure("widthBeforeHours", moved.widthBeforeHours(), HOUR_DECIMALS)
                    .figure("widthAfterHours", moved.widthAfterHours(), HOUR_DECIMALS))
        .object(
            "nextTest",
            change,
            one ->
                json.object("before", one.before().testing().next(), this::test)
                    .object("after", one.after().testing().next(), this::test));
    reasons(change);
  }

  private void reasons(AdviceChange change) {
    json.objects(
            "observations",
            change.observations(),
            one ->
                json.text("observation", one.observation())
                    .word("kind", one.kind())
                    .figure("ovulationShiftHours", one.ovulationShiftHours(), HOUR_DECIMALS)
                    .figure("widthChangeHours", one.widthChangeHours(), HOUR_DECIMALS))
        .objects(
            "rules",
            change.rules(),
            rule ->
                json.text("rule", rule.rule())
                    .word("stage", rule.stage())
                    .text("title", rule.title())
                    .flag("speaks", rule.speaks())
                    .texts("concluded", Phrasing.PLAIN.say(rule.concluded()))
                    .texts("matched", rule.matched())
                    .texts("sources", rule.sources()));
    cautions("cautionsAdded", change.cautionsAdded());
    cautions("cautionsGone", change.cautionsGone());
  }

  private void action(Action action) {
    json.word("now", action.now())
        .text("headline", action.headline().toString())
        .texts("because", action.because());
  }

  private void test(NextTest test) {
    json.word("kind", test.kind()).instant("at", test.at());
  }

  private void plan(PlanChange plan) {
    json.word("outcome", plan.outcome())
        .object("before", plan.before(), this::plan)
        .object("after", plan.after(), this::plan)
        .objects(
            "doses", plan.doses(), dose -> json.instant("at", dose.at()).word("fate", dose.fate()))
        .instants("added", plan.added());
  }

  private void plan(Plan plan) {
    EggShare share = plan.eggShare();
    json.instants("at", plan.at())
        .object(
            "eggShare",
            share,
            eggs ->
                json.figure("mean", eggs.mean(), SHARE_DECIMALS)
                    .figure("p10", eggs.p10(), SHARE_DECIMALS))
        .instant("orderBy", plan.orderBy());
  }

  private void cautions(String name, List<Warning> cautions) {
    json.objects(
        name,
        cautions,
        caution ->
            json.word("level", caution.level())
                .text("text", caution.text().toString())
                .text("rule", caution.rule()));
  }
}
