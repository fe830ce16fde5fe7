package io.github.tiderule.engine.action;

import io.github.tiderule.engine.advice.Action;
import io.github.tiderule.engine.advice.Action.Now;
import io.github.tiderule.engine.advice.Bred;
import io.github.tiderule.engine.advice.NextTest;
import io.github.tiderule.engine.advice.course.Whelping;
import io.github.tiderule.engine.advice.reasoning.EngineStep;
import io.github.tiderule.engine.days.Slot;
import io.github.tiderule.engine.plan.Breeding;
import io.github.tiderule.engine.plan.Planned;
import io.github.tiderule.engine.pregnancy.PregnancyCourse;
import io.github.tiderule.engine.season.Clock;
import io.github.tiderule.engine.season.Dated;
import io.github.tiderule.engine.season.Read;
import io.github.tiderule.engine.season.Season;
import io.github.tiderule.engine.season.Tools;
import io.github.tiderule.engine.testing.Tested;
import io.github.tiderule.rules.conclusion.FindingKind;
import io.github.tiderule.rules.fact.semen.Semen;
import io.github.tiderule.rules.sentence.Part;
import io.github.tiderule.rules.sentence.Sentence;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Says whether anything of the season is left to time. */
final class PastChoice {

  private final Read read;
  private final Season season;
  private final Tools tools;
  private final Clock clock;
  private final @Nullable PregnancyCourse course;
  private final @Nullable Dated dated;
  private final @Nullable Breeding breeding;
  private final @Nullable NextTest test;
  private final @Nullable Bred bred;
  private final boolean testStandsFirst;

  /**
   * @param course null where nothing dates the season
   */
  PastChoice(Tested tested, @Nullable PregnancyCourse course) {
    this.course = course;
    Planned planned = tested.planned();
    read = planned.standing().read();
    season = read.season();
    tools = season.tools();
    clock = season.clock();
    dated = planned.standing().dated();
    breeding = planned.breeding();
    bred = planned.bred();
    test = tested.nextTest();
    testStandsFirst = tested.first().isPresent();
  }

  /** Where it is known what became of the season, nothing is left to time. */
  Optional<Action> closed() {
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

  /** Whether nothing of the season is left to time. */
  boolean over() {
    return closed().or(this::passed).filter(action -> action.now() == Now.PASSED).isPresent();
  }

  /**
   * The last frozen dose keeps for her next season, and no box is sent for, where too few of her
   * eggs would be met.
   */
  Optional<Action> kept() {
    return breeding == null || !behind()
        ? Optional.empty()
        : breeding
            .tooLittleForLast()
            .map(
                share ->
                    season.semenPlan().semen() == Semen.FROZEN
                        ? tooFew(
                            Now.PASSED,
                            "Keep the last dose for another season: the best day left would meet"
                                + " about {} in 100 of her eggs.",
                            share)
                        : past()
                            ? tooFew(
                                Now.PASSED,
                                "Order no semen any more: the best day left would meet about {} in"
                                    + " 100 of her eggs.",
                                share)
                            : tooFew(
                                Now.TEST,
                                "Smear her before any order: by her values the best day left would"
                                    + " meet about {} in 100 of her eggs.",
                                share));
  }

  private static Action tooFew(Now now, String words, double share) {
    return new Action(
        now,
        Sentence.of(words, Math.round(100 * share)),
        List.of(EngineStep.EGG_SHARE.id(), EngineStep.PLAN.id()));
  }

  /** Her days are over, or would be if more than an estimate said so. */
  Optional<Action> passed() {
    if (testStandsFirst
        || dated == null
        || timesAreMissing()
        || (breeding != null && breeding.best().isPresent())) {
      return Optional.empty();
    }
    return openYet().or(this::awaitsWhelping).or(this::overOrUnproven);
  }

  /** Bred or not, nothing is done while her values leave open when she ovulates. */
  private Optional<Action> openYet() {
    if (!read.open() || pregnant() || past()) {
      return Optional.empty();
    }
    return Optional.of(
        new Action(
            Now.TEST,
            test == null
                ? Sentence.of("When she ovulates is open: smear her daily.")
                : Sentence.of(
                    "When she ovulates is open: smear her daily, and test again on {}.",
                    clock.dayAndTime(test.at().toInstant())),
            List.of(EngineStep.TIMELINE.id())));
  }

  private Optional<Action> awaitsWhelping() {
    @Nullable Whelping whelping = course == null ? null : course.whelping();
    if (whelping == null || !(pregnant() || bredAndDone())) {
      return Optional.empty();
    }
    Instant middle = whelping.median().toInstant();
    boolean ahead =
        whelping.p05().toLocalDate().isAfter(season.asOf().atZone(season.zone()).toLocalDate());
    Part last = clock.day(whelping.p95().toInstant());
    Sentence due =
        ahead
            ? Sentence.of(
                "Due about {} ({} to {}).",
                clock.day(middle),
                clock.day(whelping.p05().toInstant()),
                last)
            : whelping.p95().toInstant().isAfter(season.asOf())
                ? Sentence.of("Due any day, most likely by {}.", last)
                : Sentence.of("She was due by {}: ask a vet today.", last);
    return Optional.of(
        new Action(
            Now.PASSED,
            Sentence.of(pregnant() ? "She is pregnant. {}" : "Breeding is done. {}", due),
            List.of(EngineStep.EGG_SHARE.id(), EngineStep.WHELPING.id())));
  }

  private boolean pregnant() {
    return Boolean.TRUE.equals(season.outcome().pregnant());
  }

  private boolean bredAndDone() {
    return bred != null && (behind() || (breeding != null && !breeding.dosesLeft()));
  }

  private Optional<Action> overOrUnproven() {
    boolean smearFirst = test != null && read.lateByValueAlone();
    if (!behind() || smearFirst) {
      return Optional.empty();
    }
    List<String> because = List.of(EngineStep.TIMELINE.id(), EngineStep.EGG_SHARE.id());
    if (past()) {
      return Optional.of(
          new Action(
              Now.PASSED,
              Sentence.of(
                  "This season's time for breeding is over; no day ahead would meet her eggs."),
              because));
    }
    return Optional.of(
        read.proven()
            ? new Action(
                Now.TEST,
                Sentence.of(
                    "Her days are most likely over: smear her daily. While the smear is full one"
                        + " more mating with a male at hand does no harm."),
                because)
            : new Action(
                Now.TEST,
                Sentence.of(
                    "No day ahead looks fertile, but nothing proves that she ovulated: smear today,"
                        + " and test progesterone once more."),
                because));
  }

  /** Whether more than an estimate says so: a turned smear, or time without doubt. */
  private boolean past() {
    return read.has(FindingKind.DIOESTROUS_SHIFT, FindingKind.LATE_TURNED)
        || since(read.proven() ? "planning.over-after-proof" : "planning.over-after");
  }

  /**
   * Whether so many days will have gone, since the last likely day of ovulation, by any breeding.
   */
  private boolean since(String days) {
    return dated != null
        && dated
            .quantile(tools.value("planning.past-share"))
            .plus(Clock.ofDays(tools.value(days)))
            .isBefore(soonest());
  }

  /** When she could be bred next. */
  private Instant soonest() {
    return breeding == null
        ? season.asOf()
        : breeding.table().slots().stream()
            .map(Slot::middle)
            .min(Comparator.naturalOrder())
            .orElse(season.asOf());
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
  Optional<Action> noTimeLeft() {
    return timesAreMissing()
        ? Optional.of(
            new Action(
                Now.ANSWER,
                Sentence.of(
                    "None of the times given can be used any more: ask stud or clinic for others."),
                List.of(EngineStep.PLAN.id())))
        : Optional.empty();
  }
}
