package io.github.tiderule.engine.action;

import io.github.tiderule.engine.advice.Action;
import io.github.tiderule.engine.advice.Action.Now;
import io.github.tiderule.engine.advice.CommitmentKind;
import io.github.tiderule.engine.advice.NextTest;
import io.github.tiderule.engine.days.Slot;
import io.github.tiderule.engine.plan.Breeding;
import io.github.tiderule.engine.season.Clock;
import io.github.tiderule.engine.season.Dated;
import io.github.tiderule.engine.season.Read;
import io.github.tiderule.engine.season.Season;
import io.github.tiderule.engine.testing.Tested;
import io.github.tiderule.rules.StageResult.Ruled;
import io.github.tiderule.rules.conclusion.FindingKind;
import io.github.tiderule.rules.conclusion.TestFirst;
import io.github.tiderule.rules.conclusion.TestKind;
import io.github.tiderule.rules.conclusion.reading.Level;
import io.github.tiderule.rules.conclusion.reading.LevelKind;
import io.github.tiderule.rules.fact.Hours;
import io.github.tiderule.rules.sentence.Part;
import io.github.tiderule.rules.sentence.Sentence;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Says that a test comes next, and which one stands before an act that cannot be undone. */
final class TestingChoice {

  private final Read read;
  private final Season season;
  private final Clock clock;
  private final @Nullable Dated dated;
  private final @Nullable Breeding breeding;
  private final @Nullable NextTest test;
  private final Optional<Ruled<TestFirst>> first;
  private final Optional<Slot> tooLate;

  TestingChoice(Tested tested) {
    read = tested.planned().standing().read();
    season = read.season();
    clock = season.clock();
    dated = tested.planned().standing().dated();
    breeding = tested.planned().breeding();
    test = tested.nextTest();
    first = tested.first();
    tooLate = tested.tooLateForPlan();
  }

  /** Before an act that cannot be undone comes the test that decides on it. */
  Optional<Action> before() {
    if (test == null) {
      return Optional.empty();
    }
    NextTest next = test;
    return first
        .filter(ruled -> ruled.conclusion().test() == next.kind())
        .map(
            ruled ->
                new Action(
                    Now.TEST,
                    Sentence.of("{}: {}.", TestAsked.of(next, season), ruled.conclusion().words()),
                    Stream.concat(Stream.of(ruled.rule().id()), next.because().stream())
                        .distinct()
                        .toList(),
                    Stream.concat(since().stream(), follows(ruled)).toList()));
  }

  /** The same act, with what comes before any act that cannot be undone. */
  Action withWhatDecides(Action action) {
    return first
        .map(
            ruled ->
                new Action(
                    action.now(),
                    action.headline(),
                    Stream.concat(action.because().stream(), Stream.of(ruled.rule().id()))
                        .distinct()
                        .toList(),
                    follows(ruled).toList()))
        .orElse(action);
  }

  private Stream<Sentence> follows(Ruled<TestFirst> ruled) {
    return Stream.concat(ruled.conclusion().then().stream(), inTime().stream());
  }

  /** By when the test must be read for the plan, or that it comes too late for it. */
  private Optional<Sentence> inTime() {
    if (tooLate.isEmpty() && breeding != null) {
      return breeding
          .first()
          .filter(slot -> slot.by(CommitmentKind.ORDER).isPresent())
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

  /** The next test, where nothing comes before it. */
  Optional<Action> next() {
    if (test == null) {
      return Optional.empty();
    }
    Sentence headline = Sentence.of("{}{}", TestAsked.of(test, season), how(test));
    return Optional.of(new Action(Now.TEST, headline, test.because(), forecastOfCalendar()));
  }

  private Sentence how(NextTest next) {
    if (read.levels().isEmpty() && (breeding == null || breeding.first().isEmpty())) {
      return Sentence.of("; do not breed by the day count alone.");
    }
    return next.kind() == TestKind.PROGESTERONE ? where() : Sentence.of(".");
  }

  /** The same laboratory is one that gave every number so far. */
  private Sentence where() {
    long laboratories =
        read.levels().stream()
            .filter(level -> level.kind() != LevelKind.BAND)
            .map(Level::series)
            .distinct()
            .count();
    return laboratories == 0
        ? Sentence.of(", by a laboratory that gives a number.")
        : laboratories == 1
            ? Sentence.of(", same laboratory and method as before.")
            : Sentence.of(", where her latest number was measured.");
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
}
