package io.github.tiderule.engine.action;

import io.github.tiderule.engine.advice.Action;
import io.github.tiderule.engine.advice.Action.Now;
import io.github.tiderule.engine.advice.Bred;
import io.github.tiderule.engine.advice.NextTest;
import io.github.tiderule.engine.advice.course.Whelping;
import io.github.tiderule.engine.advice.reasoning.EngineStep;
import io.github.tiderule.engine.days.Deadline;
import io.github.tiderule.engine.days.Slot;
import io.github.tiderule.engine.plan.Breeding;
import io.github.tiderule.engine.plan.Planned;
import io.github.tiderule.engine.pregnancy.PregnancyCourse;
import io.github.tiderule.engine.season.Care;
import io.github.tiderule.engine.season.Clock;
import io.github.tiderule.engine.season.Dated;
import io.github.tiderule.engine.season.Read;
import io.github.tiderule.engine.season.Season;
import io.github.tiderule.engine.season.SeasonAhead;
import io.github.tiderule.engine.season.Standing;
import io.github.tiderule.engine.season.Tools;
import io.github.tiderule.engine.testing.Tested;
import io.github.tiderule.rules.StageResult.Ruled;
import io.github.tiderule.rules.conclusion.About;
import io.github.tiderule.rules.conclusion.FindingKind;
import io.github.tiderule.rules.conclusion.TestFirst;
import io.github.tiderule.rules.conclusion.care.Caution;
import io.github.tiderule.rules.conclusion.reading.Held;
import io.github.tiderule.rules.conclusion.reading.Level;
import io.github.tiderule.rules.conclusion.reading.LevelKind;
import io.github.tiderule.rules.conclusion.reading.Question;
import io.github.tiderule.rules.fact.Hours;
import io.github.tiderule.rules.sentence.Part;
import io.github.tiderule.rules.sentence.Sentence;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Says in one sentence what to do now, and until when that holds. */
public final class ActionChoice {

  private final Standing standing;
  private final Read read;
  private final Season season;
  private final Tools tools;
  private final Clock clock;
  private final Care care;
  private final @Nullable Dated dated;
  private final @Nullable PregnancyCourse course;
  private final @Nullable Breeding breeding;
  private final @Nullable NextTest test;
  private final @Nullable Bred bred;
  private final Optional<Ruled<TestFirst>> first;
  private final Optional<Slot> tooLate;
  private final VetChoice vet;
  private final MatingChoice mating;
  private final CourseChoice values;

  /**
   * Begins a choice.
   *
   * @param course null where nothing dates the season
   * @param care what rules say of it
   */
  public ActionChoice(Tested tested, @Nullable PregnancyCourse course, Care care) {
    this.course = course;
    this.care = care;
    standing = tested.planned().standing();
    read = standing.read();
    season = read.season();
    tools = season.tools();
    clock = season.clock();
    dated = standing.dated();
    breeding = tested.planned().breeding();
    bred = tested.planned().bred();
    test = tested.nextTest();
    first = tested.first();
    tooLate = tested.tooLateForPlan();
    vet = new VetChoice(standing, course, care);
    mating = new MatingChoice(tested, care);
    values = new CourseChoice(standing);
  }

  /** What to do now. */
  public Action action() {
    return vet.action()
        .or(this::closed)
        .or(this::whelpingNear)
        .or(this::between)
        .or(this::withoutSemen)
        .or(this::answer)
        .or(this::byValues)
        .or(this::testFirst)
        .or(mating::refused)
        .or(mating::late)
        .or(mating::bySigns)
        .or(mating::onForecast)
        .or(mating::breedOrBook)
        .or(this::kept)
        .or(this::passed)
        .or(this::noTimeLeft)
        .or(this::testing)
        .orElseGet(this::nothing);
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
    return passed().isPresent() ? Optional.empty() : mating.withoutSemen();
  }

  /** Whether the semen in hand is not to be used, so that no day is planned for it. */
  public boolean doseUnusable() {
    return withoutSemen().isPresent();
  }

  /** Whether nothing of the season is left to time. */
  public boolean seasonOver() {
    return closed().or(this::passed).filter(action -> action.now() == Now.PASSED).isPresent();
  }

  /** Where it is known what became of the season, nothing is left to time. */
  private Optional<Action> closed() {
    return read.findings().stream()
        .filter(f -> f.kind() == FindingKind.WHELPED || f.kind() == FindingKind.NOT_PREGNANT)
        .findFirst()
        .map(
            found ->
                new Action(
                    Now.PASSED,
                    found.kind() == FindingKind.WHELPED
                        ? Sentence.of("She has whelped; nothing is left to time this season.")
                        : Sentence.of("She is not pregnant; nothing is left to time this season."),
                    List.of(EngineStep.WHELPING.id())));
  }

  /** The question that is to be answered before anything is planned. */
  public Optional<Question> asked() {
    return leading().map(Ruled::conclusion);
  }

  private Optional<Action> answer() {
    return leading()
        .map(
            ruled ->
                new Action(Now.ANSWER, toAnswer(ruled.conclusion()), List.of(ruled.rule().id())));
  }

  private static Sentence toAnswer(Question question) {
    return question.about().equals(Question.FIRST_BLOOD)
        ? Sentence.of(
            "Say first whether the day of first blood is right; until then it is not used.")
        : Sentence.of(
            "Answer the question about {} first; until then it is not used.",
            Part.key(question.about()));
  }

  /** A question about first blood or the latest result, which is held for it. */
  private Optional<Ruled<Question>> leading() {
    Set<String> held =
        read.reading().all(Held.class).stream().map(Held::observation).collect(Collectors.toSet());
    Optional<Instant> lastUsed =
        read.levels().stream().map(level -> level.at()).max(Instant::compareTo);
    return read.reading()
        .ruled(Question.class)
        .filter(ruled -> held.contains(ruled.conclusion().about()))
        .filter(
            ruled ->
                ruled.conclusion().about().equals(Question.FIRST_BLOOD)
                    || !drawn(ruled.conclusion().about()).isBefore(lastUsed.orElse(Instant.MIN)))
        .min(
            Comparator.comparing(
                ruled -> !ruled.conclusion().about().equals(Question.FIRST_BLOOD)));
  }

  private Instant drawn(String id) {
    return season.observations().stream()
        .filter(observation -> observation.id().equals(id))
        .map(observation -> observation.at())
        .findFirst()
        .orElse(Instant.MIN);
  }

  /** What her values call for, with what comes before any act that cannot be undone. */
  private Optional<Action> byValues() {
    return values
        .action()
        .map(
            action ->
                first
                    .map(
                        ruled ->
                            new Action(
                                action.now(),
                                action.headline(),
                                Stream.concat(
                                        action.because().stream(), Stream.of(ruled.rule().id()))
                                    .distinct()
                                    .toList(),
                                Stream.concat(ruled.conclusion().then().stream(), inTime().stream())
                                    .toList()))
                    .orElse(action));
  }

  /** Before an act that cannot be undone comes the test that decides on it. */
  private Optional<Action> testFirst() {
    if (test == null) {
      return Optional.empty();
    }
    NextTest next = test;
    return first.map(
        ruled ->
            new Action(
                Now.TEST,
                Sentence.of("{}: {}.", ask(next), ruled.conclusion().words()),
                Stream.concat(Stream.of(ruled.rule().id()), next.because().stream())
                    .distinct()
                    .toList(),
                Stream.of(since().stream(), ruled.conclusion().then().stream(), inTime().stream())
                    .flatMap(lines -> lines)
                    .toList()));
  }

  /** By when the test must be read for the plan, or that it comes too late for it. */
  private Optional<Sentence> inTime() {
    if (tooLate.isEmpty() && breeding != null) {
      return breeding
          .first()
          .filter(slot -> slot.by(Deadline.Kind.ORDER).isPresent())
          .map(
              slot ->
                  Sentence.of(
                      "It must be read by {}, when the order for {} is due.",
                      clock.dayAndTime(slot.decideBy()),
                      clock.day(slot.middle())));
    }
    return tooLate.map(
        slot ->
            Sentence.of(
                "For {} this comes too late, since all is due by {}: ask for a later pick-up, fresh"
                    + " semen or a male near by.",
                clock.day(slot.middle()),
                clock.dayAndTime(slot.lastCall())));
  }

  private Sentence ask(NextTest next) {
    boolean now = Hours.between(season.asOf(), next.at().toInstant()) < 1;
    return switch (next.kind()) {
      case "cytology" ->
          now
              ? Sentence.of("Take a smear now")
              : Sentence.of("Take a smear on {}", clock.dayAndTime(next.at().toInstant()));
      case "lh" -> Sentence.of("Test LH on {}", clock.dayAndTime(next.at().toInstant()));
      default -> Sentence.of("Test progesterone on {}", clock.dayAndTime(next.at().toInstant()));
    };
  }

  /** How long ago she ovulated, in whole days, where a late first value leaves it that open. */
  private Optional<Sentence> since() {
    if (dated == null || !read.has(FindingKind.LATE_PRESENTATION)) {
      return Optional.empty();
    }
    long least = daysSince(dated.quantile(0.95));
    long most = daysSince(dated.quantile(0.05));
    return least < 1 || most <= least
        ? Optional.empty()
        : Optional.of(Sentence.of("She ovulated about {} to {} days ago.", least, most));
  }

  private long daysSince(Instant at) {
    return Math.round(Hours.between(at, season.asOf()) / 24);
  }

  /**
   * The last frozen dose keeps for her next season where this one would meet too few of her eggs.
   */
  private Optional<Action> kept() {
    return breeding == null || !behind()
        ? Optional.empty()
        : breeding
            .tooLittleForLast()
            .map(
                share ->
                    new Action(
                        Now.PASSED,
                        Sentence.of(
                            "Keep the last dose for another season: the best day left would meet"
                                + " about {} in 100 of her eggs.",
                            Math.round(100 * share)),
                        List.of(EngineStep.EGG_SHARE.id(), EngineStep.PLAN.id())));
  }

  private Optional<Action> passed() {
    if (first.isPresent()
        || dated == null
        || timesAreMissing()
        || (breeding != null && breeding.best().isPresent())) {
      return Optional.empty();
    }
    List<String> because = List.of(EngineStep.TIMELINE.id(), EngineStep.EGG_SHARE.id());
    @Nullable Whelping whelping = course == null ? null : course.whelping();
    if (bred != null
        && whelping != null
        && (behind() || (breeding != null && !breeding.dosesLeft()))) {
      return Optional.of(
          new Action(
              Now.PASSED,
              Sentence.of(
                  "She is bred and nothing is left to time; whelping about {}.",
                  clock.day(whelping.median().toInstant())),
              List.of(EngineStep.EGG_SHARE.id(), EngineStep.WHELPING.id())));
    }
    boolean smearFirst = test != null && read.lateByValueAlone();
    if (!behind() || smearFirst) {
      return Optional.empty();
    }
    return Optional.of(
        past()
            ? new Action(
                Now.PASSED,
                Sentence.of(
                    "This season's time for breeding is over; no day ahead would meet her eggs."),
                because)
            : new Action(
                Now.TEST,
                Sentence.of(
                    "No day ahead looks fertile, but nothing proves that she ovulated: smear today,"
                        + " and test progesterone once more."),
                because));
  }

  /** Whether more than an estimate says so: proof, a turned smear, or time without doubt. */
  private boolean past() {
    double sure = 86_400 * tools.value("planning.over-after");
    return read.proven()
        || read.has(FindingKind.LATE_TURNED)
        || (dated != null
            && dated
                .quantile(tools.value("planning.past-share"))
                .plusSeconds(Math.round(sure))
                .isBefore(season.asOf()));
  }

  /** Whether a breeding would still do, yet none of the times given for it is left. */
  private boolean timesAreMissing() {
    return dated != null
        && bred == null
        && breeding == null
        && Planned.shareNow(dated) > tools.value("planning.possible-share");
  }

  /** Whether ovulation has passed, nine times in ten and more. */
  private boolean behind() {
    return dated != null && dated.past();
  }

  /** Where every time that stud and clinic gave is gone or out of reach, others are asked for. */
  private Optional<Action> noTimeLeft() {
    return timesAreMissing()
        ? Optional.of(
            new Action(
                Now.ANSWER,
                Sentence.of(
                    "None of the times given can be used any more: ask stud or clinic for others."),
                List.of(EngineStep.PLAN.id())))
        : Optional.empty();
  }

  private Optional<Action> testing() {
    if (test == null) {
      return Optional.empty();
    }
    String what =
        switch (test.kind()) {
          case "lh" -> "Test LH on {}";
          case "cytology" -> "Take a smear on {}";
          default ->
              test.also().isEmpty()
                  ? "Test progesterone on {}"
                  : "Test progesterone, and LH on the same blood, on {}";
        };
    String how =
        read.levels().isEmpty() && (breeding == null || breeding.first().isEmpty())
            ? "; do not breed by the day count alone."
            : test.kind().equals("progesterone") ? before() : ".";
    Sentence headline = Sentence.of(what + how, clock.dayAndTime(test.at().toInstant()));
    return Optional.of(new Action(Now.TEST, headline, test.because(), forecastOfCalendar()));
  }

  /** The usual days, named as what they are, where nothing but the calendar tells them. */
  private List<Sentence> forecastOfCalendar() {
    if (breeding == null || !breeding.byCalendarAlone()) {
      return List.of();
    }
    List<LocalDate> days = breeding.usualDays();
    return days.isEmpty()
        ? List.of()
        : List.of(
            Sentence.of(
                "By the calendar alone her days are about {} to {}: a forecast, not a plan.",
                new Part.Day(days.get(0), Part.DayForm.SHORT),
                new Part.Day(days.get(days.size() - 1), Part.DayForm.SHORT)));
  }

  /** The same laboratory is one that gave every number so far. */
  private String before() {
    long laboratories =
        read.levels().stream()
            .filter(level -> level.kind() != LevelKind.BAND)
            .map(Level::series)
            .distinct()
            .count();
    return laboratories == 0
        ? ", by a laboratory that gives a number."
        : laboratories == 1
            ? ", same laboratory and method as before."
            : ", where her latest number was measured.";
  }

  private Action nothing() {
    if (dated == null) {
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
    Instant until = season.asOf().plus(Clock.ofDays(tools.value("planning.valid-days")));
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
