package io.github.tiderule.format;

import io.github.tiderule.engine.advice.Amount;
import io.github.tiderule.engine.advice.AmountUnit;
import io.github.tiderule.engine.advice.DosesMade;
import io.github.tiderule.engine.advice.InseminationSheet;
import io.github.tiderule.engine.advice.SemenTemperature;
import io.github.tiderule.engine.advice.Warning;
import io.github.tiderule.engine.advice.course.BeforeSeason;
import io.github.tiderule.rules.conclusion.care.CautionLevel;
import io.github.tiderule.rules.conclusion.care.CheckState;
import io.github.tiderule.rules.conclusion.care.SheetPart;
import io.github.tiderule.rules.fact.semen.Route;
import io.github.tiderule.rules.fact.semen.Semen;
import io.github.tiderule.rules.kennel.Whose;
import io.github.tiderule.rules.sentence.Sentence;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;

/** A sheet and the checks before a season, made by hand, with something in every field. */
public final class SampleSheet {

  private SampleSheet() {}

  private static InseminationSheet.Line line(SheetPart part, String text, boolean veterinaryAct) {
    return new InseminationSheet.Line(
        part, Sentence.of(text), veterinaryAct, "CAR-900", List.of("common-practice"));
  }

  private static Amount amount(
      String what, String working, double least, double most, AmountUnit unit) {
    return new Amount(Sentence.of(what), Sentence.of(working), least, most, unit);
  }

  static InseminationSheet insemination() {
    return new InseminationSheet(
        OffsetDateTime.parse("2027-01-14T10:00:00+01:00"),
        Semen.CHILLED,
        Route.VAGINAL,
        List.of(
            amount("sperm, counted here", "10 mL × 7.2 million/mL", 72, 72, AmountUnit.MILLION)),
        amount("usable sperm", "all in hand", 40, 72, AmountUnit.MILLION),
        List.of(
            new DosesMade(Route.TRANSCERVICAL, 100, 150, 0, 0, 0, 0, 28, 3),
            new DosesMade(Route.VAGINAL, 200, 400, 0, 1, 0, 0, 128, null)),
        amount("extender to add", "4 mL wanted − 2.5 mL in hand", 1.5, 1.5, AmountUnit.MILLILITRES),
        new SemenTemperature(5.0, 4.0, 6.0, -15.0, Sentence.of("The semen is at 5 °C.")),
        List.of(
            new Warning(
                CautionLevel.CARE,
                Sentence.of("It arrived warm"),
                "CAR-901",
                List.of("common-practice"))),
        List.of(line(SheetPart.SAME_DAY, "Tell the sender today", true)),
        LocalDate.parse("2027-01-16"),
        List.of(line(SheetPart.BEFORE, "Two people check it", false)),
        List.of(line(SheetPart.VOLUME, "One school: 5 mL", false)),
        List.of(Sentence.of("Not known yet: normal forms.")));
  }

  static BeforeSeason beforeSeason() {
    return new BeforeSeason(
        new BeforeSeason.NextSeason(
            LocalDate.parse("2027-07-10"),
            LocalDate.parse("2027-06-19"),
            LocalDate.parse("2027-08-02"),
            3,
            184,
            Sentence.of("From the median of her 3 intervals.")),
        List.of(
            new BeforeSeason.Check(
                Whose.FEMALE,
                CheckState.DUE,
                true,
                Sentence.of("Test her"),
                "CAR-902",
                List.of("common-practice")),
            new BeforeSeason.Check(
                Whose.STUD,
                CheckState.DONE,
                false,
                Sentence.of("Tested"),
                "CAR-903",
                List.of("common-practice"))));
  }
}
