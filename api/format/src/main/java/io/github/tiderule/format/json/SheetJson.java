package io.github.tiderule.format.json;

import io.github.tiderule.engine.advice.Amount;
import io.github.tiderule.engine.advice.DosesMade;
import io.github.tiderule.engine.advice.InseminationSheet;
import io.github.tiderule.engine.advice.course.BeforeSeason;
import io.github.tiderule.rules.sentence.Phrasing;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The insemination sheet and the checks before a season, as parts of the Advice document. */
final class SheetJson {

  private static final int DECIMALS = 3;

  private final Document json;

  SheetJson(Document json) {
    this.json = json;
  }

  void sheet(InseminationSheet sheet) {
    json.instant("at", sheet.at())
        .word("semen", sheet.semen())
        .word("route", sheet.route())
        .objects("arithmetic", sheet.arithmetic(), this::amount)
        .object("usable", sheet.usable(), this::amount)
        .objects("doses", sheet.doses(), this::doses)
        .object("extender", sheet.extender(), this::amount)
        .object(
            "temperature",
            sheet.temperature(),
            match ->
                json.figure("semenC", match.semenC(), DECIMALS)
                    .figure("leastC", match.leastC(), DECIMALS)
                    .figure("mostC", match.mostC(), DECIMALS)
                    .figure("extenderShiftC", match.extenderShiftC(), DECIMALS)
                    .text("text", match.text().toString()))
        .objects(
            "findings",
            sheet.findings(),
            finding ->
                json.word("level", finding.level())
                    .text("text", finding.text().toString())
                    .text("rule", finding.rule())
                    .texts("sources", finding.sources()));
    lines("sameDay", sheet.sameDay());
    json.text(
        "secondParcelBy",
        sheet.secondParcelBy() == null ? null : sheet.secondParcelBy().toString());
    lines("steps", sheet.steps());
    lines("advice", sheet.advice());
    json.texts("notes", Phrasing.PLAIN.say(sheet.notes()));
  }

  private void amount(Amount amount) {
    json.text("what", amount.what().toString())
        .text("working", amount.working().toString())
        .figure("least", amount.least(), DECIMALS)
        .figure("most", amount.most(), DECIMALS)
        .word("unit", amount.unit());
  }

  private void doses(DosesMade doses) {
    json.word("route", doses.route())
        .figure("floorMillion", doses.floorMillion(), DECIMALS)
        .figure("targetMillion", doses.targetMillion(), DECIMALS)
        .whole("least", doses.least())
        .whole("most", doses.most())
        .whole("targetLeast", doses.targetLeast())
        .whole("targetMost", doses.targetMost())
        .figure("shortMillion", doses.shortMillion(), DECIMALS)
        .figure("unitsForOne", units(doses), 0);
  }

  private static @Nullable Double units(DosesMade doses) {
    Integer units = doses.unitsForOne();
    return units == null ? null : units.doubleValue();
  }

  private void lines(String name, List<InseminationSheet.Line> lines) {
    json.objects(
        name,
        lines,
        line ->
            json.word("part", line.part())
                .text("text", line.text().toString())
                .flag("veterinaryAct", line.veterinaryAct())
                .text("rule", line.rule())
                .texts("sources", line.sources()));
  }

  void beforeSeason(BeforeSeason before) {
    json.object(
            "next",
            before.next(),
            next ->
                json.day("expected", next.expected())
                    .day("from", next.from())
                    .day("to", next.to())
                    .whole("intervals", next.intervals())
                    .figure("medianDays", next.medianDays(), 1)
                    .text("text", next.text().toString()))
        .objects(
            "checks",
            before.checks(),
            check ->
                json.word("whose", check.whose())
                    .word("state", check.state())
                    .flag("veterinaryAct", check.veterinaryAct())
                    .text("text", check.text().toString())
                    .text("rule", check.rule())
                    .texts("sources", check.sources()));
  }
}
