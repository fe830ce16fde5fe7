package io.github.tiderule.engine.action;

import io.github.tiderule.engine.advice.Action;
import io.github.tiderule.engine.advice.Action.Now;
import io.github.tiderule.engine.advice.NextTest;
import io.github.tiderule.engine.advice.reasoning.EngineStep;
import io.github.tiderule.engine.days.Slot;
import io.github.tiderule.engine.plan.Breeding;
import io.github.tiderule.engine.pregnancy.PregnancyCourse;
import io.github.tiderule.engine.season.Care;
import io.github.tiderule.engine.season.Clock;
import io.github.tiderule.engine.season.Season;
import io.github.tiderule.engine.season.SeasonAhead;
import io.github.tiderule.engine.season.Standing;
import io.github.tiderule.engine.testing.Tested;
import io.github.tiderule.rules.StageResult.Ruled;
import io.github.tiderule.rules.conclusion.About;
import io.github.tiderule.rules.conclusion.care.Caution;
import io.github.tiderule.rules.conclusion.reading.Question;
import io.github.tiderule.rules.sentence.Sentence;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Says in one sentence what to do now, and until when that holds. */
public final class ActionChoice {

  private final Standing standing;
  private final Season season;
  private final Care care;
  private final @Nullable Breeding breeding;
  private final @Nullable NextTest test;
  private final VetChoice vet;
  private final PastChoice past;
  private final AnswerChoice questions;
  private final CourseChoice values;
  private final MatingChoice mating;
  private final TestingChoice testing;

  /**
   * Begins a choice.
   *
   * @param course null where nothing dates the season
   * @param care what rules say of it
   */
  public ActionChoice(Tested tested, @Nullable PregnancyCourse course, Care care) {
    this.care = care;
    standing = tested.planned().standing();
    season = standing.season();
    breeding = tested.planned().breeding();
    test = tested.nextTest();
    vet = new VetChoice(standing, course, care);
    past = new PastChoice(tested, course);
    questions = new AnswerChoice(standing.read());
    values = new CourseChoice(standing);
    mating = new MatingChoice(tested, care);
    testing = new TestingChoice(tested);
  }

  /** What to do now. */
  public Action action() {
    return vet.action()
        .or(past::closed)
        .or(this::whelpingNear)
        .or(this::between)
        .or(this::withoutSemen)
        .or(questions::action)
        .or(this::byValues)
        .or(testing::before)
        .or(mating::refused)
        .or(mating::late)
        .or(mating::bySigns)
        .or(mating::onForecast)
        .or(mating::breedOrBook)
        .or(mating::beforeTest)
        .or(past::kept)
        .or(past::passed)
        .or(past::noTimeLeft)
        .or(testing::next)
        .map(this::beforeCaesarean)
        .orElseGet(this::nothing);
  }

  /** What stands before a caesarean is booked follows whatever is said of whelping. */
  private Action beforeCaesarean(Action action) {
    List<Ruled<Caution>> booking =
        action.now() == Now.PASSED
            ? care.ruled(Caution.class)
                .filter(ruled -> ruled.conclusion().about() == About.CAESAREAN_BOOKING)
                .toList()
            : List.of();
    return booking.isEmpty()
        ? action
        : new Action(
            action.now(),
            action.headline(),
            Stream.concat(
                    action.because().stream(), booking.stream().map(ruled -> ruled.rule().id()))
                .distinct()
                .toList(),
            Stream.concat(
                    action.then().stream(), booking.stream().map(ruled -> said(ruled.conclusion())))
                .distinct()
                .toList());
  }

  private static Sentence said(Caution caution) {
    return Sentence.of("{}.", caution.words());
  }

  /** Whelping within a day or two leads, whatever else there is to say. */
  private Optional<Action> whelpingNear() {
    List<String> because =
        care.ruled(Caution.class)
            .filter(ruled -> ruled.conclusion().about() == About.WHELPING_NEAR)
            .map(ruled -> ruled.rule().id())
            .distinct()
            .toList();
    return because.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new Action(
                Now.PASSED,
                Sentence.of(
                    "Whelping is near, within a day or two: stay with her, and tell your vet"
                        + " today."),
                because));
  }

  /** Between two seasons there is time to see to what is due. */
  private Optional<Action> between() {
    return SeasonAhead.between(season)
        ? Optional.of(
            new Action(
                Now.BOOK,
                Sentence.of(
                    "No season has begun: see to what is due, and note the first blood. If she is"
                        + " in season already, test now."),
                SeasonAhead.due(care)))
        : Optional.empty();
  }

  private Optional<Action> withoutSemen() {
    return past.passed().isPresent() ? Optional.empty() : mating.withoutSemen();
  }

  /** Whether the semen in hand is not to be used, so that no day is planned for it. */
  public boolean doseUnusable() {
    return withoutSemen().isPresent();
  }

  /** Whether nothing of the season is left to time. */
  public boolean seasonOver() {
    return past.over();
  }

  /** The question that is to be answered before anything is planned. */
  public Optional<Question> asked() {
    return questions.asked();
  }

  /** What her values call for, with what comes before any act that cannot be undone. */
  private Optional<Action> byValues() {
    return values.action().map(testing::withWhatDecides);
  }

  /** Whether her values are to be made sure of before any day is planned. */
  public boolean valuesWait() {
    return values.waiting();
  }

  private Action nothing() {
    if (standing.dated() == null) {
      return new Action(
          Now.TEST,
          Sentence.of("Nothing dates this season yet: test progesterone and note the first blood."),
          List.of(EngineStep.TIMELINE.id()));
    }
    return mating
        .firstOfPlan()
        .orElseGet(
            () ->
                new Action(
                    Now.TEST,
                    Sentence.of("No day can be planned yet; test again before deciding."),
                    List.of(EngineStep.TIMELINE.id())));
  }

  /** The advice should be asked for again by then. */
  public Instant validUntil() {
    Instant until = season.asOf().plus(Clock.ofDays(season.tools().value("planning.valid-days")));
    if (test != null && test.at().toInstant().isAfter(season.asOf())) {
      until = earlier(until, test.at().toInstant());
    }
    if (breeding != null && breeding.first().isPresent()) {
      Slot first = breeding.first().get();
      for (Instant end : List.of(first.decideBy(), first.to())) {
        until = end.isAfter(season.asOf()) ? earlier(until, end) : until;
      }
    }
    return until;
  }

  private static Instant earlier(Instant a, Instant b) {
    return a.isBefore(b) ? a : b;
  }
}
