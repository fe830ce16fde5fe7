package io.github.tiderule.format.json;

import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.course.Caesarean;
import io.github.tiderule.engine.advice.course.LookBack;
import io.github.tiderule.engine.advice.course.Pregnancy;
import io.github.tiderule.engine.advice.course.Quantiles;

/** The parts of an advice that speak of pregnancy and after. */
final class PregnancyJson {

  private static final int SHARE_DECIMALS = 4;
  private static final int DAY_DECIMALS = 1;

  private PregnancyJson() {}

  static void write(Document json, Advice advice) {
    json.object("pregnancy", advice.course().pregnancy(), pregnancy -> pregnancy(json, pregnancy))
        .object("caesarean", advice.course().caesarean(), caesarean -> caesarean(json, caesarean))
        .object("lookBack", advice.course().lookBack(), lookBack -> lookBack(json, lookBack));
  }

  static void quantiles(Document json, Quantiles quantiles) {
    json.instant("median", quantiles.median())
        .instant("p05", quantiles.p05())
        .instant("p25", quantiles.p25())
        .instant("p75", quantiles.p75())
        .instant("p95", quantiles.p95());
  }

  private static void pregnancy(Document json, Pregnancy pregnancy) {
    json.objects(
            "milestones",
            pregnancy.milestones(),
            milestone ->
                json.word("kind", milestone.kind())
                    .instant("from", milestone.from())
                    .instant("to", milestone.to())
                    .text("title", milestone.title().toString())
                    .text("rule", milestone.rule())
                    .texts("sources", milestone.sources()))
        .objects(
            "redFlags",
            pregnancy.redFlags(),
            flag ->
                json.word("kind", flag.kind())
                    .text("text", flag.text().toString())
                    .text("rule", flag.rule())
                    .texts("sources", flag.sources()))
        .objects(
            "happened",
            pregnancy.happened(),
            one ->
                json.word("kind", one.kind())
                    .day("on", one.on())
                    .whole("daysAfterOvulation", one.daysAfterOvulation())
                    .text("text", one.text().toString())
                    .text("observation", one.observation()));
  }

  private static void caesarean(Document json, Caesarean caesarean) {
    json.objects(
            "days",
            caesarean.days(),
            day ->
                json.day("day", day.day())
                    .whole("daysAfterOvulation", day.daysAfterOvulation())
                    .figure("chanceEarly", day.chanceEarly(), SHARE_DECIMALS)
                    .figure("chanceBegun", day.chanceBegun(), SHARE_DECIMALS)
                    .word("verdict", day.verdict())
                    .text("text", day.text().toString())
                    .text("rule", day.rule())
                    .texts("sources", day.sources()))
        .text("text", caesarean.text().toString());
  }

  private static void lookBack(Document json, LookBack lookBack) {
    json.day("whelpedOn", lookBack.whelpedOn())
        .instant("median", lookBack.median())
        .instant("p05", lookBack.p05())
        .instant("p95", lookBack.p95())
        .figure("errorDays", lookBack.errorDays(), DAY_DECIMALS)
        .flag("within", lookBack.within())
        .object("ovulation", lookBack.ovulation(), ovulation -> quantiles(json, ovulation))
        .text("text", lookBack.text().toString());
  }
}
