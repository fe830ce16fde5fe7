package io.github.tiderule.format;

import io.github.tiderule.engine.advice.Action;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.AdviceBreeding;
import io.github.tiderule.engine.advice.AdviceCourse;
import io.github.tiderule.engine.advice.AdviceReasoning;
import io.github.tiderule.engine.advice.AdviceTesting;
import io.github.tiderule.engine.advice.AdviceTiming;
import io.github.tiderule.engine.advice.Bred;
import io.github.tiderule.engine.advice.BreedingDay;
import io.github.tiderule.engine.advice.Change;
import io.github.tiderule.engine.advice.Commitment;
import io.github.tiderule.engine.advice.CommitmentKind;
import io.github.tiderule.engine.advice.EggShare;
import io.github.tiderule.engine.advice.Mistake;
import io.github.tiderule.engine.advice.NextTest;
import io.github.tiderule.engine.advice.OnForecast;
import io.github.tiderule.engine.advice.Plan;
import io.github.tiderule.engine.advice.Reason;
import io.github.tiderule.engine.advice.Verdict;
import io.github.tiderule.engine.advice.Warning;
import io.github.tiderule.engine.advice.course.DayProbability;
import io.github.tiderule.engine.advice.course.Ovulation;
import io.github.tiderule.engine.advice.course.Patterns;
import io.github.tiderule.engine.advice.course.Quantiles;
import io.github.tiderule.engine.advice.course.SeasonCourse;
import io.github.tiderule.engine.advice.course.Whelping;
import io.github.tiderule.engine.advice.reasoning.DayCount;
import io.github.tiderule.engine.advice.reasoning.Disagreement;
import io.github.tiderule.engine.advice.reasoning.Influence;
import io.github.tiderule.engine.advice.reasoning.NotFired;
import io.github.tiderule.engine.advice.reasoning.ObservationNote;
import io.github.tiderule.engine.advice.reasoning.ObservationUse;
import io.github.tiderule.engine.advice.reasoning.Query;
import io.github.tiderule.engine.advice.reasoning.Stamp;
import io.github.tiderule.engine.advice.reasoning.TraceLine;
import io.github.tiderule.engine.advice.reasoning.TraceStage;
import io.github.tiderule.rules.conclusion.CourseKind;
import io.github.tiderule.rules.conclusion.Effect;
import io.github.tiderule.rules.conclusion.TestKind;
import io.github.tiderule.rules.conclusion.care.CautionLevel;
import io.github.tiderule.rules.conclusion.care.Thumb;
import io.github.tiderule.rules.fact.assay.Unit;
import io.github.tiderule.rules.sentence.Sentence;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;

/** Advice made by hand, to test writers with. Invented; no engine gave it. */
public final class SampleAdvice {

  private SampleAdvice() {}

  private static OffsetDateTime at(String day, String clock) {
    return OffsetDateTime.parse("2027-" + day + "T" + clock + ":00+01:00");
  }

  private static Stamp stamp() {
    return new Stamp("0.1.0", "sha256:" + "0123456789abcdef".repeat(4));
  }

  /** Advice with something in every field. */
  public static Advice full() {
    return Advice.of(
            stamp(),
            at("01-12", "18:30"),
            at("01-13", "18:30"),
            "juniper",
            new Action(
                Action.Now.BOOK,
                Sentence.of("Order the semen tonight and breed her on Thursday and Friday."),
                List.of("PLN-001")))
        .withQuestions(
            List.of(
                new Query(
                    "p1",
                    Sentence.of("In which unit is p1 (2.1)?"),
                    List.of(
                        new Query.Reading(
                            Unit.NG_PER_ML, null, Sentence.of("would be 2.1 ng/mL (6.68 nmol/L)")),
                        new Query.Reading(
                            Unit.NMOL_PER_L,
                            null,
                            Sentence.of("would be 0.66 ng/mL (2.1 nmol/L)"))))))
        .withCautions(
            List.of(
                new Warning(
                    CautionLevel.CARE,
                    Sentence.of("Never force a mating."),
                    "SAF-009",
                    List.of("common-practice")),
                new Warning(
                    CautionLevel.VET,
                    Sentence.of("She is unwell: see a vet today."),
                    "SAF-002",
                    List.of())))
        .with(
            new AdviceTiming(
                new Quantiles(
                    at("01-10", "12:00"),
                    at("01-09", "12:00"),
                    at("01-10", "02:00"),
                    at("01-10", "20:00"),
                    at("01-11", "12:00")),
                new Ovulation(
                    at("01-12", "14:20"),
                    at("01-11", "06:10"),
                    at("01-12", "02:00"),
                    at("01-13", "01:00"),
                    at("01-13", "20:40"),
                    false,
                    List.of(
                        new DayProbability(LocalDate.parse("2027-01-11"), 0.21),
                        new DayProbability(LocalDate.parse("2027-01-12"), 0.46),
                        new DayProbability(LocalDate.parse("2027-01-13"), 0.29)),
                    0.04,
                    new Patterns(0.9, 0.06, 0.04, 0.02, 0.01, 0.03),
                    0.4),
                new SeasonCourse(
                    CourseKind.RISING_AGAIN,
                    Sentence.of("She stood still at about 5 ng/mL for a week and rises again"),
                    List.of("p1", "p4"),
                    at("01-05", "08:00"),
                    "FND-122",
                    Sentence.of("An earlier rise looked like ovulation"))))
        .with(
            new AdviceBreeding(
                days(),
                new Plan(
                    List.of(at("01-14", "10:00"), at("01-15", "10:00")),
                    new EggShare(0.9, 0.78),
                    at("01-13", "14:00"),
                    List.of("BRD-014"),
                    List.of(
                        new Plan.Alternative(
                            List.of(at("01-15", "10:00")),
                            new EggShare(0.8649999, 0.75),
                            Sentence.of("One journey less."))),
                    List.of(
                        new Commitment(
                            CommitmentKind.ORDER,
                            at("01-13", "14:00"),
                            at("01-14", "10:00"),
                            Sentence.of("Order the semen for Thu 14 Jan"))),
                    new OnForecast(
                        at("01-13", "14:00"),
                        at("01-13", "16:00"),
                        0.9,
                        0.85,
                        0.02,
                        0.07,
                        Mistake.ACT,
                        Sentence.of("The result would come after this is due.")),
                    List.of(Sentence.of("Egg shares count timing alone."))),
                new Bred(
                    1,
                    new EggShare(0.3, 0.1),
                    0.6,
                    Sentence.of("The plan adds 60 in 100 to that.")),
                SampleSheet.insemination()))
        .with(
            new AdviceTesting(
                new NextTest(
                    TestKind.PROGESTERONE,
                    at("01-13", "08:00"),
                    at("01-13", "16:00"),
                    0.041,
                    List.of("NXT-003")),
                null,
                List.of(
                    new Change(
                        Sentence.of(
                            "If the next progesterone is below 3.1 ng/mL, breed a day later."),
                        "next",
                        3.1,
                        null,
                        List.of(at("01-15", "10:00"), at("01-16", "10:00"))))))
        .with(
            AdviceCourse.NONE
                .withBeforeSeason(SampleSheet.beforeSeason())
                .withWhelping(
                    new Whelping(
                        at("03-16", "14:00"),
                        at("03-12", "14:00"),
                        at("03-20", "14:00"),
                        List.of(new DayProbability(LocalDate.parse("2027-03-16"), 0.19)))))
        .with(
            new AdviceReasoning(
                List.of(
                    new TraceLine(
                        1,
                        TraceStage.READING,
                        "RDG-004",
                        "A value below the range is a limit",
                        List.of("p1"),
                        List.of(Sentence.of("p1 is taken as a limit")),
                        List.of("common-practice")),
                    new TraceLine(
                        2,
                        TraceStage.FINDINGS,
                        "P4-021",
                        "First rise",
                        List.of("p1", "l1"),
                        List.of(Sentence.of("first rise before p1")),
                        List.of("kutzler-2003"))),
                List.of(
                    new NotFired(
                        "P4-030", "Proven rise", Sentence.of("a later value on the same method"))),
                List.of(
                    new Influence("p1", -9.54, -31.02, 0.013),
                    new Influence("l1", 0.2, -0.1, 0.71)),
                List.of(
                    new Disagreement(
                        "when thawed semen should meet the eggs",
                        List.of(
                            new Disagreement.Position(
                                "CAR-060",
                                Sentence.of("Two and three days after ovulation"),
                                List.of("reynaud-2005")),
                            new Disagreement.Position(
                                "CAR-061",
                                Sentence.of("About a day later"),
                                List.of("steckler-2013"))),
                        Sentence.of("Between the two"),
                        Sentence.of("nobody has compared them"))),
                List.of(
                    new ObservationNote(
                        "p1",
                        ObservationUse.CONVERTED,
                        Sentence.of("p1 is reported as 2.1 nmol/L"),
                        "RDG-058",
                        List.of("unit-definition")),
                    new ObservationNote(
                        "p1",
                        ObservationUse.DISCOUNTED,
                        Sentence.of("p1 travelled warm and may read low"),
                        "RDG-022",
                        List.of("common-practice"))),
                List.of(
                    new DayCount(
                        Thumb.FIXED_DAYS,
                        Sentence.of("Fixed days after first blood"),
                        LocalDate.parse("2027-01-05"),
                        List.of(LocalDate.parse("2027-01-14"), LocalDate.parse("2027-01-16")),
                        List.of(),
                        Sentence.of("First blood is a guess"),
                        "CAR-900",
                        List.of("common-practice")),
                    new DayCount(
                        Thumb.WHELPING,
                        Sentence.of("Whelping after mating"),
                        LocalDate.parse("2027-01-14"),
                        List.of(LocalDate.parse("2027-03-18")),
                        List.of("b1"),
                        null,
                        "CAR-901",
                        List.of("common-practice")))));
  }

  private static List<BreedingDay> days() {
    return List.of(
        new BreedingDay(
            1,
            LocalDate.parse("2027-01-14"),
            at("01-14", "08:00"),
            at("01-14", "12:00"),
            Verdict.RECOMMENDED,
            new EggShare(0.82, 0.66),
            List.of(
                new Reason(
                    "BRD-014",
                    Effect.SUPPORTS,
                    Sentence.of("Her eggs are ripe from about then."),
                    List.of("reynaud-2005"),
                    List.of("p1")),
                new Reason(
                    "BRD-020", Effect.OPPOSES, Sentence.of("It is early."), List.of(), List.of()))),
        new BreedingDay(
            2,
            LocalDate.parse("2027-01-18"),
            at("01-18", "20:00"),
            at("01-19", "00:00"),
            Verdict.AVOID,
            new EggShare(0.0004, 0),
            List.of(
                new Reason(
                    "BRD-030",
                    Effect.VETOES,
                    Sentence.of("The cervix has closed."),
                    List.of("tsutsui-2009"),
                    List.of()))));
  }

  /** Advice where nothing can be said. */
  public static Advice empty() {
    return Advice.of(
        stamp(),
        at("01-12", "18:30"),
        at("01-13", "18:30"),
        null,
        new Action(Action.Now.ANSWER, Sentence.of("Answer the questions first."), List.of()));
  }
}
