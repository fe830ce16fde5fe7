package io.github.tiderule.api.report;

import io.github.tiderule.engine.advice.Action;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.AdviceBreeding;
import io.github.tiderule.engine.advice.AdviceCourse;
import io.github.tiderule.engine.advice.AdviceReasoning;
import io.github.tiderule.engine.advice.AdviceTesting;
import io.github.tiderule.engine.advice.AdviceTiming;
import io.github.tiderule.engine.advice.Amount;
import io.github.tiderule.engine.advice.AmountUnit;
import io.github.tiderule.engine.advice.Bred;
import io.github.tiderule.engine.advice.BreedingDay;
import io.github.tiderule.engine.advice.Change;
import io.github.tiderule.engine.advice.Commitment;
import io.github.tiderule.engine.advice.CommitmentKind;
import io.github.tiderule.engine.advice.DosesMade;
import io.github.tiderule.engine.advice.EggShare;
import io.github.tiderule.engine.advice.InseminationSheet;
import io.github.tiderule.engine.advice.Mistake;
import io.github.tiderule.engine.advice.NextTest;
import io.github.tiderule.engine.advice.OnForecast;
import io.github.tiderule.engine.advice.Plan;
import io.github.tiderule.engine.advice.Reason;
import io.github.tiderule.engine.advice.SemenTemperature;
import io.github.tiderule.engine.advice.Verdict;
import io.github.tiderule.engine.advice.Warning;
import io.github.tiderule.engine.advice.course.BeforeSeason;
import io.github.tiderule.engine.advice.course.Caesarean;
import io.github.tiderule.engine.advice.course.CountedFrom;
import io.github.tiderule.engine.advice.course.DayProbability;
import io.github.tiderule.engine.advice.course.Happened;
import io.github.tiderule.engine.advice.course.HappenedKind;
import io.github.tiderule.engine.advice.course.LookBack;
import io.github.tiderule.engine.advice.course.Milestone;
import io.github.tiderule.engine.advice.course.Ovulation;
import io.github.tiderule.engine.advice.course.Patterns;
import io.github.tiderule.engine.advice.course.Pregnancy;
import io.github.tiderule.engine.advice.course.Quantiles;
import io.github.tiderule.engine.advice.course.RedFlag;
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
import io.github.tiderule.rules.conclusion.care.CaesareanVerdict;
import io.github.tiderule.rules.conclusion.care.CautionLevel;
import io.github.tiderule.rules.conclusion.care.CheckState;
import io.github.tiderule.rules.conclusion.care.MilestoneKind;
import io.github.tiderule.rules.conclusion.care.RedFlagKind;
import io.github.tiderule.rules.conclusion.care.SheetPart;
import io.github.tiderule.rules.conclusion.care.Thumb;
import io.github.tiderule.rules.fact.assay.Unit;
import io.github.tiderule.rules.fact.semen.Route;
import io.github.tiderule.rules.fact.semen.Semen;
import io.github.tiderule.rules.kennel.Whose;
import io.github.tiderule.rules.sentence.Sentence;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Random;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Advice drawn at random, with texts that are long, empty, wide or hostile. It obeys the types and
 * nothing else; the same seed gives the same advice.
 */
public final class InventedAdvice {

  private static final List<String> WORDS =
      List.of(
          "she",
          "progesterone",
          "ovulation",
          "a",
          "p1",
          "6.1 ng/mL",
          "\u001b[31mred",
          "\u202Ereversed",
          "two\nlines",
          "tab\there",
          "犬の繁殖",
          "cafe\u0301",
          "\uD83D\uDC15",
          "\uD800",
          "–",
          "w".repeat(200));

  private final Random random;

  private InventedAdvice(long seed) {
    this.random = new Random(seed);
  }

  /** Advice of a seed. */
  public static Advice of(long seed) {
    return new InventedAdvice(seed).advice();
  }

  private Sentence said() {
    return Sentence.quoted(text());
  }

  private String text() {
    StringBuilder text = new StringBuilder();
    int count = random.nextInt(30);
    for (int i = 0; i < count; i++) {
      text.append(i == 0 ? "" : " ").append(WORDS.get(random.nextInt(WORDS.size())));
    }
    return text.toString();
  }

  private double share() {
    return switch (random.nextInt(5)) {
      case 0 -> 0;
      case 1 -> 1;
      case 2 -> random.nextDouble() / 1000;
      default -> random.nextDouble();
    };
  }

  private double number() {
    return random.nextGaussian() * Math.pow(10, random.nextInt(5));
  }

  private OffsetDateTime at() {
    return OffsetDateTime.parse("2027-01-01T00:00:00+01:00").plusMinutes(random.nextInt(60_000));
  }

  private <T> List<T> some(Supplier<T> one) {
    return Stream.generate(one).limit(random.nextInt(5)).toList();
  }

  private <T> @Nullable T perhaps(Supplier<T> one) {
    return random.nextInt(4) == 0 ? null : one.get();
  }

  private <E> E oneOf(List<E> all) {
    return all.get(random.nextInt(all.size()));
  }

  private EggShare eggs() {
    return new EggShare(share(), share());
  }

  private List<OffsetDateTime> times() {
    return Stream.generate(this::at).limit(1 + random.nextInt(4)).sorted().toList();
  }

  private DayProbability dayProbability() {
    return new DayProbability(at().toLocalDate(), share());
  }

  private BreedingDay breedingDay() {
    OffsetDateTime from = at();
    return new BreedingDay(
        1 + random.nextInt(500),
        from.toLocalDate(),
        from,
        from.plusHours(random.nextInt(30)),
        oneOf(List.of(Verdict.values())),
        eggs(),
        some(
            () ->
                new Reason(
                    text(),
                    oneOf(List.of(Effect.values())),
                    said(),
                    some(this::text),
                    some(this::text))));
  }

  private Ovulation ovulation() {
    return new Ovulation(
        at(),
        at(),
        at(),
        at(),
        at(),
        random.nextBoolean(),
        some(this::dayProbability),
        share(),
        new Patterns(share(), share(), share(), share(), share(), share()),
        share());
  }

  private Plan plan() {
    return new Plan(
        times(),
        eggs(),
        perhaps(this::at),
        some(this::text),
        some(() -> new Plan.Alternative(times(), eggs(), said())),
        some(() -> new Commitment(oneOf(List.of(CommitmentKind.values())), at(), at(), said())),
        perhaps(
            () ->
                new OnForecast(
                    at(),
                    at(),
                    share(),
                    share(),
                    share(),
                    share(),
                    oneOf(List.of(Mistake.values())),
                    said())),
        some(this::said));
  }

  private Advice advice() {
    List<BreedingDay> days = Stream.generate(this::breedingDay).limit(random.nextInt(20)).toList();
    return Advice.of(
            new Stamp("0.1.0-" + "x".repeat(random.nextInt(90)), "sha256:" + "ab".repeat(32)),
            at(),
            at(),
            perhaps(this::text),
            new Action(oneOf(List.of(Action.Now.values())), said(), some(this::text)))
        .withQuestions(
            some(
                () ->
                    new Query(
                        text(),
                        said(),
                        some(
                            () -> new Query.Reading(oneOf(List.of(Unit.values())), null, said())))))
        .withCautions(
            some(
                () ->
                    new Warning(
                        oneOf(List.of(CautionLevel.values())), said(), text(), some(this::text))))
        .with(
            new AdviceTiming(
                perhaps(() -> new Quantiles(at(), at(), at(), at(), at())),
                perhaps(this::ovulation),
                perhaps(this::course)))
        .with(
            new AdviceBreeding(
                days,
                perhaps(this::plan),
                perhaps(() -> new Bred(1 + random.nextInt(9), eggs(), share(), said())),
                perhaps(this::sheet)))
        .with(
            new AdviceTesting(
                perhaps(
                    () ->
                        new NextTest(
                            oneOf(List.of(TestKind.values())),
                            at(),
                            at(),
                            number() / 100,
                            some(this::text))),
                perhaps(this::said),
                some(() -> new Change(said(), text(), perhaps(this::share), null, some(this::at)))))
        .with(
            new AdviceCourse(
                perhaps(this::beforeSeason),
                perhaps(
                    () ->
                        new Whelping(
                            at(),
                            at(),
                            at(),
                            some(this::dayProbability),
                            oneOf(List.of(CountedFrom.values())),
                            some(this::said))),
                perhaps(
                    () ->
                        new Pregnancy(
                            some(this::milestone), some(this::redFlag), some(this::happened))),
                perhaps(() -> new Caesarean(some(this::caesareanDay), said())),
                perhaps(this::lookBack)))
        .with(
            new AdviceReasoning(
                some(
                    () ->
                        new TraceLine(
                            1 + random.nextInt(999),
                            oneOf(List.of(TraceStage.values())),
                            text(),
                            text(),
                            some(() -> oneOf(List.of("p1", "l1", "m1", text()))),
                            some(this::said),
                            some(() -> oneOf(List.of("kutzler-2003", "mir-2011", text()))))),
                some(() -> new NotFired(text(), text(), said())),
                some(
                    () ->
                        new Influence(
                            oneOf(List.of("p1", "l1", text())), number(), number(), share())),
                some(
                    () ->
                        new Disagreement(text(), List.of(position(), position()), said(), said())),
                some(
                    () ->
                        new ObservationNote(
                            text(),
                            oneOf(List.of(ObservationUse.values())),
                            said(),
                            text(),
                            some(this::text))),
                some(
                    () ->
                        new DayCount(
                            oneOf(List.of(Thumb.values())),
                            said(),
                            perhaps(() -> at().toLocalDate()),
                            some(() -> at().toLocalDate()),
                            some(this::text),
                            perhaps(this::said),
                            text(),
                            some(this::text)))));
  }

  private InseminationSheet sheet() {
    return new InseminationSheet(
        perhaps(this::at),
        oneOf(List.of(Semen.FRESH, Semen.CHILLED, Semen.FROZEN)),
        oneOf(List.of(Route.VAGINAL, Route.TRANSCERVICAL)),
        some(this::amount),
        perhaps(this::amount),
        some(
            () ->
                new DosesMade(
                    oneOf(List.of(Route.VAGINAL, Route.TRANSCERVICAL)),
                    share() * 200,
                    share() * 400,
                    random.nextInt(3),
                    3 + random.nextInt(9),
                    random.nextInt(2),
                    2 + random.nextInt(9),
                    share() * 100,
                    perhaps(() -> random.nextInt(100)))),
        perhaps(this::amount),
        perhaps(() -> new SemenTemperature(share(), share(), share(), share(), said())),
        some(() -> new Warning(CautionLevel.CARE, said(), text(), some(this::text))),
        some(this::sheetLine),
        perhaps(() -> at().toLocalDate()),
        some(this::sheetLine),
        some(this::sheetLine),
        some(this::said));
  }

  private Amount amount() {
    double least = share() * 1e6;
    return new Amount(said(), said(), least, least * (1 + share()), AmountUnit.MILLION);
  }

  private InseminationSheet.Line sheetLine() {
    return new InseminationSheet.Line(
        SheetPart.BEFORE, said(), random.nextBoolean(), text(), some(this::text));
  }

  private SeasonCourse course() {
    return new SeasonCourse(
        oneOf(List.of(CourseKind.values())),
        said(),
        some(this::text),
        at(),
        text(),
        perhaps(this::said));
  }

  private BeforeSeason beforeSeason() {
    return new BeforeSeason(
        perhaps(
            () ->
                new BeforeSeason.NextSeason(
                    at().toLocalDate(),
                    at().toLocalDate(),
                    at().toLocalDate(),
                    random.nextInt(9),
                    share() * 400,
                    said())),
        some(
            () ->
                new BeforeSeason.Check(
                    oneOf(List.of(Whose.values())),
                    oneOf(List.of(CheckState.values())),
                    random.nextBoolean(),
                    said(),
                    text(),
                    some(this::text))));
  }

  private Happened happened() {
    return new Happened(
        oneOf(List.of(HappenedKind.values())),
        at().toLocalDate(),
        random.nextInt(80),
        said(),
        perhaps(this::text));
  }

  private Milestone milestone() {
    return new Milestone(
        oneOf(List.of(MilestoneKind.values())), at(), at(), said(), text(), some(this::text));
  }

  private RedFlag redFlag() {
    return new RedFlag(oneOf(List.of(RedFlagKind.values())), said(), text(), some(this::text));
  }

  private Caesarean.Day caesareanDay() {
    return new Caesarean.Day(
        at().toLocalDate(),
        59 + random.nextInt(8),
        share(),
        share(),
        oneOf(List.of(CaesareanVerdict.values())),
        said(),
        text(),
        some(this::text));
  }

  private LookBack lookBack() {
    return new LookBack(
        at().toLocalDate(),
        at(),
        at(),
        at(),
        number(),
        random.nextBoolean(),
        new Quantiles(at(), at(), at(), at(), at()),
        said());
  }

  private Disagreement.Position position() {
    return new Disagreement.Position(text(), said(), some(this::text));
  }
}
