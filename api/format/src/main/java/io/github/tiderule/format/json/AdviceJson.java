package io.github.tiderule.format.json;

import io.github.tiderule.engine.advice.Action;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.Bred;
import io.github.tiderule.engine.advice.BreedingDay;
import io.github.tiderule.engine.advice.EggShare;
import io.github.tiderule.engine.advice.OnForecast;
import io.github.tiderule.engine.advice.Plan;
import io.github.tiderule.engine.advice.course.DayProbability;
import io.github.tiderule.engine.advice.course.Ovulation;
import io.github.tiderule.engine.advice.course.SeasonCourse;
import io.github.tiderule.engine.advice.course.Whelping;
import io.github.tiderule.engine.advice.reasoning.DayCount;
import io.github.tiderule.engine.advice.reasoning.Disagreement;
import io.github.tiderule.engine.advice.reasoning.LocalProtocol;
import io.github.tiderule.engine.advice.reasoning.Stamp;
import io.github.tiderule.rules.sentence.Phrasing;
import io.github.tiderule.rules.sentence.Sentence;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Advice as a JSON document, schema {@code tiderule/advice/1}.
 *
 * <p>Shares and probabilities have four decimals, hours one, concentrations two. The same advice
 * gives the same text to the last character.
 */
public final class AdviceJson {

  /** The name and version of the document. */
  public static final String SCHEMA = "tiderule/advice/1";

  private static final int SHARE_DECIMALS = 4;
  private static final int HOUR_DECIMALS = 1;
  private static final int CONCENTRATION_DECIMALS = 2;

  private final Document json;

  private AdviceJson(Document json) {
    this.json = json;
  }

  /**
   * The document, with a line feed at its end.
   *
   * @throws IllegalArgumentException if a number of the advice is not finite
   */
  public static String text(Advice advice, Layout layout) {
    return Document.text(layout, json -> new AdviceJson(json).advice(advice));
  }

  private void advice(Advice advice) {
    json.text("schema", SCHEMA)
        .object("stamp", advice.stamp(), this::stamp)
        .instant("asOf", advice.asOf())
        .instant("validUntil", advice.validUntil())
        .text("femaleId", advice.femaleId())
        .object("action", advice.action(), this::action)
        .object("lhPeak", advice.timing().lhPeak(), peak -> PregnancyJson.quantiles(json, peak))
        .object("ovulation", advice.timing().ovulation(), this::ovulation)
        .objects("breedingDays", advice.breeding().days(), this::breedingDay)
        .object("plan", advice.breeding().plan(), this::plan)
        .object(
            "nextTest",
            advice.testing().next(),
            test ->
                json.word("kind", test.kind())
                    .instant("at", test.at())
                    .instant("resultAt", test.resultAt())
                    .figure("gain", test.gain(), SHARE_DECIMALS)
                    .texts("because", test.because())
                    .words("also", test.also()))
        .text("noTestBecause", text(advice.testing().noTestBecause()))
        .object("bred", advice.breeding().bred(), this::bred)
        .object("whelping", advice.course().whelping(), this::whelping);
    PregnancyJson.write(json, advice);
    talk(advice);
    reasoning(advice);
    SheetJson sheet = new SheetJson(json);
    if (advice.breeding().insemination() != null) {
      json.object("insemination", advice.breeding().insemination(), sheet::sheet);
    }
    if (advice.course().beforeSeason() != null) {
      json.object("beforeSeason", advice.course().beforeSeason(), sheet::beforeSeason);
    }
    if (advice.timing().seasonCourse() != null) {
      json.object("course", advice.timing().seasonCourse(), this::course);
    }
  }

  private void course(SeasonCourse course) {
    json.word("kind", course.kind())
        .text("text", course.text().toString())
        .texts("observations", course.observations())
        .instant("since", course.since())
        .text("rule", course.rule())
        .text("withdrawn", text(course.withdrawn()));
  }

  private void action(Action action) {
    json.word("now", action.now())
        .text("headline", action.headline().toString())
        .texts("because", action.because());
    if (!action.then().isEmpty()) {
      json.texts("then", action.then().stream().map(Sentence::toString).toList());
    }
  }

  private void stamp(Stamp stamp) {
    json.text("engine", stamp.engine()).text("rules", stamp.rules());
    LocalProtocol overlay = stamp.overlay();
    if (overlay != null) {
      json.object("overlay", overlay, this::overlay);
    }
  }

  private void overlay(LocalProtocol overlay) {
    json.text("name", overlay.name())
        .text("hash", overlay.hash())
        .objects(
            "changes",
            overlay.changes(),
            change ->
                json.text("parameter", change.parameter())
                    .exact("usual", change.usual())
                    .exact("local", change.local())
                    .text("unit", change.unit())
                    .text("reason", change.reason())
                    .text("by", change.by())
                    .day("since", change.since()));
  }

  private void talk(Advice advice) {
    json.objects(
            "questions",
            advice.questions(),
            query ->
                json.text("about", query.about())
                    .text("text", query.text().toString())
                    .objects(
                        "readings",
                        query.readings(),
                        reading ->
                            json.word("unit", reading.unit())
                                .figure("value", reading.value(), CONCENTRATION_DECIMALS)
                                .text("meaning", reading.meaning().toString())))
        .objects(
            "cautions",
            advice.cautions(),
            caution ->
                json.word("level", caution.level())
                    .text("text", caution.text().toString())
                    .text("rule", caution.rule())
                    .texts("sources", caution.sources()));
  }

  private void reasoning(Advice advice) {
    json.objects(
            "influence",
            advice.reasoning().influence(),
            influence ->
                json.text("observation", influence.observation())
                    .figure("ovulationShiftHours", influence.ovulationShiftHours(), HOUR_DECIMALS)
                    .figure("widthChangeHours", influence.widthChangeHours(), HOUR_DECIMALS)
                    .figure("oddProbability", influence.oddProbability(), SHARE_DECIMALS))
        .objects(
            "wouldChange",
            advice.testing().wouldChange(),
            change ->
                json.text("ifThen", change.ifThen().toString())
                    .text("observation", change.observation())
                    .figure("below", change.below(), CONCENTRATION_DECIMALS)
                    .figure("above", change.above(), CONCENTRATION_DECIMALS)
                    .instants("plan", change.plan()))
        .objects(
            "trace",
            advice.reasoning().trace(),
            line ->
                json.whole("seq", line.seq())
                    .word("stage", line.stage())
                    .text("rule", line.rule())
                    .text("title", line.title())
                    .texts("matched", line.matched())
                    .texts("concluded", Phrasing.PLAIN.say(line.concluded()))
                    .texts("sources", line.sources()))
        .objects(
            "notFired",
            advice.reasoning().notFired(),
            rule ->
                json.text("rule", rule.rule())
                    .text("title", rule.title())
                    .text("missing", rule.missing().toString()))
        .objects("disagreements", advice.reasoning().disagreements(), this::disagreement)
        .objects(
            "observationNotes",
            advice.reasoning().observationNotes(),
            note ->
                json.text("observation", note.observation())
                    .word("use", note.use())
                    .text("text", note.text().toString())
                    .text("rule", note.rule())
                    .texts("sources", note.sources()))
        .objects("dayCounts", advice.reasoning().dayCounts(), this::dayCount);
  }

  private void dayCount(DayCount count) {
    json.text("kind", count.kind().word())
        .text("text", count.text().toString())
        .day("from", count.from())
        .texts("days", count.days().stream().map(LocalDate::toString).toList())
        .texts("observations", count.observations())
        .text("but", count.but() == null ? null : count.but().toString())
        .text("rule", count.rule())
        .texts("sources", count.sources());
  }

  private void disagreement(Disagreement disagreement) {
    json.text("about", disagreement.about())
        .objects(
            "positions",
            disagreement.positions(),
            position ->
                json.text("rule", position.rule())
                    .text("text", position.text().toString())
                    .texts("sources", position.sources()))
        .text("leansTo", disagreement.leansTo().toString())
        .text("why", disagreement.why().toString());
  }

  private void ovulation(Ovulation ovulation) {
    json.instant("median", ovulation.median())
        .instant("p05", ovulation.p05())
        .instant("p25", ovulation.p25())
        .instant("p75", ovulation.p75())
        .instant("p95", ovulation.p95())
        .flag("confirmed", ovulation.confirmed());
    byDay(ovulation.byDay());
    json.figure("noOvulationProbability", ovulation.noOvulationProbability(), SHARE_DECIMALS)
        .object(
            "patterns",
            ovulation.patterns(),
            patterns ->
                json.figure("ordinary", patterns.ordinary(), SHARE_DECIMALS)
                    .figure("plateau", patterns.plateau(), SHARE_DECIMALS)
                    .figure("noOvulation", patterns.noOvulation(), SHARE_DECIMALS)
                    .figure("irregular", patterns.irregular(), SHARE_DECIMALS)
                    .figure("failing", patterns.failing(), SHARE_DECIMALS)
                    .figure("brokenOff", patterns.brokenOff(), SHARE_DECIMALS))
        .figure("fit", ovulation.fit(), SHARE_DECIMALS);
  }

  private void byDay(List<DayProbability> days) {
    json.objects(
        "byDay",
        days,
        day -> json.day("day", day.day()).figure("probability", day.probability(), SHARE_DECIMALS));
  }

  private void eggShare(EggShare share) {
    json.object(
        "eggShare",
        share,
        eggs ->
            json.figure("mean", eggs.mean(), SHARE_DECIMALS)
                .figure("p10", eggs.p10(), SHARE_DECIMALS));
  }

  private void breedingDay(BreedingDay day) {
    json.whole("rank", day.rank())
        .day("day", day.day())
        .instant("from", day.from())
        .instant("to", day.to())
        .word("verdict", day.verdict());
    eggShare(day.eggShare());
    json.objects(
        "reasons",
        day.reasons(),
        reason ->
            json.text("rule", reason.rule())
                .word("effect", reason.effect())
                .text("text", reason.text().toString())
                .texts("sources", reason.sources())
                .texts("observations", reason.observations()));
  }

  private void plan(Plan plan) {
    json.instants("at", plan.at());
    eggShare(plan.eggShare());
    json.instant("orderBy", plan.orderBy())
        .texts("becauseOf", plan.becauseOf())
        .objects(
            "alternatives",
            plan.alternatives(),
            alternative -> {
              json.instants("at", alternative.at());
              eggShare(alternative.eggShare());
              json.text("note", alternative.note().toString());
            })
        .objects(
            "commitments",
            plan.commitments(),
            commitment ->
                json.word("kind", commitment.kind())
                    .instant("by", commitment.by())
                    .instant("for", commitment.forTime())
                    .text("text", commitment.text().toString()))
        .object("forecast", plan.forecast(), this::forecast)
        .texts("notes", Phrasing.PLAIN.say(plan.notes()));
  }

  private void forecast(OnForecast forecast) {
    json.instant("decideBy", forecast.decideBy())
        .instant("resultAt", forecast.resultAt())
        .figure("acting", forecast.acting(), SHARE_DECIMALS)
        .figure("waiting", forecast.waiting(), SHARE_DECIMALS)
        .figure("actingLoses", forecast.actingLoses(), SHARE_DECIMALS)
        .figure("waitingLoses", forecast.waitingLoses(), SHARE_DECIMALS)
        .word("cheaperMistake", forecast.cheaperMistake())
        .text("text", forecast.text().toString());
  }

  private void bred(Bred bred) {
    json.whole("count", bred.count());
    eggShare(bred.eggShare());
    json.figure("another", bred.another(), SHARE_DECIMALS).text("text", bred.text().toString());
  }

  private void whelping(Whelping whelping) {
    json.instant("median", whelping.median())
        .instant("p05", whelping.p05())
        .instant("p95", whelping.p95());
    byDay(whelping.byDay());
    json.word("countedFrom", whelping.countedFrom())
        .texts("notes", Phrasing.PLAIN.say(whelping.notes()));
  }

  private static @Nullable String text(@Nullable Sentence sentence) {
    return sentence == null ? null : sentence.toString();
  }
}
