package io.github.tiderule.engine.action;

import io.github.tiderule.engine.advice.Action;
import io.github.tiderule.engine.advice.Action.Now;
import io.github.tiderule.engine.advice.Mistake;
import io.github.tiderule.engine.advice.NextTest;
import io.github.tiderule.engine.advice.OnForecast;
import io.github.tiderule.engine.advice.reasoning.EngineStep;
import io.github.tiderule.engine.days.Slot;
import io.github.tiderule.engine.plan.Breeding;
import io.github.tiderule.engine.plan.Commitments;
import io.github.tiderule.engine.plan.Planned;
import io.github.tiderule.engine.season.Care;
import io.github.tiderule.engine.season.Clock;
import io.github.tiderule.engine.season.Season;
import io.github.tiderule.engine.season.Tools;
import io.github.tiderule.engine.testing.Tested;
import io.github.tiderule.rules.conclusion.About;
import io.github.tiderule.rules.conclusion.FindingKind;
import io.github.tiderule.rules.conclusion.TestKind;
import io.github.tiderule.rules.conclusion.care.Caution;
import io.github.tiderule.rules.conclusion.care.SheetFinding;
import io.github.tiderule.rules.fact.Hours;
import io.github.tiderule.rules.fact.semen.Route;
import io.github.tiderule.rules.fact.semen.Semen;
import io.github.tiderule.rules.sentence.Sentence;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Says whether it is time to breed, to book, or to decide on a forecast. */
final class MatingChoice {

  private final Season season;
  private final Tools tools;
  private final Clock clock;
  private final Planned planned;
  private final Care care;
  private final @Nullable Breeding breeding;
  private final @Nullable NextTest test;
  private final @Nullable OnForecast forecast;

  MatingChoice(Tested tested, Care care) {
    this.care = care;
    planned = tested.planned();
    season = planned.season();
    tools = season.tools();
    clock = season.clock();
    breeding = planned.breeding();
    test = tested.nextTest();
    forecast = tested.forecast();
  }

  /** Semen that is not to be used comes before any day for it, unless she was bred with it. */
  Optional<Action> withoutSemen() {
    boolean given = planned.bred() != null && (breeding == null || !breeding.dosesLeft());
    List<String> because =
        Stream.concat(
                care.ruled(Caution.class)
                    .filter(ruled -> ruled.conclusion().about() == About.UNUSABLE_DOSE)
                    .map(ruled -> ruled.rule().id()),
                care.ruled(SheetFinding.class)
                    .filter(ruled -> ruled.conclusion().about() == About.UNUSABLE_DOSE)
                    .map(ruled -> ruled.rule().id()))
            .distinct()
            .toList();
    return given || because.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new Action(
                Now.VET,
                Sentence.of(
                    "This dose cannot be used: let a vet judge it, and find another dose or male"
                        + " before she is inseminated."),
                because,
                breeding == null || breeding.days().isEmpty()
                    ? List.of()
                    : List.of(
                        Sentence.of(
                            "Days that are named stand for another dose or another male; nothing"
                                + " is booked or thawed for this one."))));
  }

  /** She refused lately: she is tried again, whatever the figures say, and never forced. */
  Optional<Action> refused() {
    if (season.semenPlan().route() != Route.NATURAL || breeding == null) {
      return Optional.empty();
    }
    double lately = tools.value("planning.refused-hours");
    return season.observations().stream()
        .filter(one -> refusing().contains(one.id()))
        .map(one -> one.at())
        .filter(at -> Hours.between(at, season.asOf()) <= lately)
        .max(Comparator.naturalOrder())
        .flatMap(
            at ->
                breeding
                    .first()
                    .filter(slot -> Hours.between(season.asOf(), slot.from()) <= lately)
                    .map(
                        slot ->
                            new Action(
                                Now.BREED,
                                Sentence.of(
                                    "She refused on {}: try her again on {}, {}, and never force"
                                        + " her.",
                                    clock.dayAndTime(at),
                                    clock.day(slot.middle()),
                                    clock.span(slot)),
                                because(),
                                whyRefused())));
  }

  /** What is done about the reason that was found, or what the reasons may be. */
  private List<Sentence> whyRefused() {
    List<Sentence> known =
        care.all(Caution.class).stream()
            .filter(one -> one.about() == About.REFUSAL)
            .map(caution -> Sentence.of("{}.", caution.words()))
            .toList();
    return known.isEmpty()
        ? List.of(
            Sentence.of(
                "Not ready yet, past it, in pain, or not this male: a smear tells the first two, a"
                    + " vet the third."))
        : known;
  }

  private Set<String> refusing() {
    return planned.standing().read().findings().stream()
        .filter(finding -> finding.kind() == FindingKind.REFUSING)
        .flatMap(finding -> finding.observations().stream())
        .collect(Collectors.toUnmodifiableSet());
  }

  private List<String> because() {
    return breeding == null ? List.of() : breeding.becauseOf();
  }

  /** Smears and standing are all there is to go by: she is bred all through to the turn. */
  Optional<Action> bySigns() {
    if (!planned.standing().read().has(FindingKind.BY_SIGNS)) {
      return Optional.empty();
    }
    return soon()
        .map(
            slot ->
                new Action(
                    Now.BREED,
                    breed(slot),
                    because(),
                    List.of(
                        Sentence.of(
                            "Then every second day while she stands, until the smear turns; smear"
                                + " her every day or two."),
                        withoutLaboratory())));
  }

  /** The first time of the plan, where it is as good as now. */
  private Optional<Slot> soon() {
    return breeding == null
        ? Optional.empty()
        : breeding
            .first()
            .filter(
                slot ->
                    Hours.between(season.asOf(), slot.from())
                        <= tools.value("planning.breed-within"));
  }

  private Sentence withoutLaboratory() {
    return Boolean.FALSE.equals(season.laboratory().reachable())
        ? Sentence.of(
            "Smears and standing can be days out, so breed right through. An LH kit at home, daily"
                + " from her swelling on, would narrow it.")
        : Sentence.of(
            "Smears and standing can be days out. Wherever progesterone can be tested, one value"
                + " says more.");
  }

  /**
   * She came late, and the smear of today says that the door is still open: what can be done at
   * once is done, since waiting for another test would cost the days that are left.
   */
  Optional<Action> late() {
    if (breeding == null || !planned.standing().read().lateButOpen()) {
      return Optional.empty();
    }
    return breeding.first().flatMap(this::late);
  }

  private Optional<Action> late(Slot first) {
    List<String> because = breeding == null ? List.of() : breeding.becauseOf();
    boolean soon =
        Hours.between(season.asOf(), first.from()) <= tools.value("planning.breed-within");
    Semen semen = season.semenPlan().semen();
    if (soon && semen == Semen.FROZEN) {
      return Optional.of(new Action(Now.BREED, breed(first), because, List.of(keepNoMistake())));
    }
    if (semen == Semen.CHILLED && !soon && !first.deadlines().isEmpty()) {
      if (smearComesBefore(first)) {
        return Optional.of(smearBefore(first, because));
      }
      return Optional.of(
          new Action(
              Now.BOOK,
              new Commitments(season.semenPlan(), clock).headline(first),
              because,
              List.of(
                  Sentence.of(
                      "Fresh semen or a mating today would come sooner than the box, and each day"
                          + " counts now."))));
    }
    return Optional.empty();
  }

  /** Whether a smear of another day can be read before the box is ordered. */
  private boolean smearComesBefore(Slot first) {
    return test != null
        && test.kind() == TestKind.CYTOLOGY
        && !test.resultAt().toInstant().isAfter(first.decideBy());
  }

  private Action smearBefore(Slot first, List<String> because) {
    Instant at = Objects.requireNonNull(test).at().toInstant();
    return new Action(
        Now.TEST,
        Sentence.of(
            "Smear her again on {}: the semen is ordered only if it is still full, by {}.",
            clock.dayAndTime(at),
            clock.dayAndTime(first.decideBy())),
        because,
        List.of(
            Sentence.of("If it has turned, her fertile days are over: order nothing."),
            Sentence.of(
                "Fresh semen or a mating today would come sooner than the box, and each day counts"
                    + " now.")));
  }

  private static Sentence keepNoMistake() {
    return Sentence.of(
        "Nobody knows how many days ago she ovulated: keeping the semen for her next season is no"
            + " mistake.");
  }

  private Sentence breed(Slot first) {
    return Sentence.of(
        mates() ? "Mate her on {}, {}." : "Inseminate her on {}, {}.",
        clock.day(first.middle()),
        clock.span(first));
  }

  /** A decision that cannot wait for a result, where acting is the cheaper mistake. */
  Optional<Action> onForecast() {
    if (forecast == null || forecast.cheaperMistake() != Mistake.ACT) {
      return Optional.empty();
    }
    Instant by = forecast.decideBy().toInstant();
    return Optional.of(
        new Action(
            Now.BOOK,
            by.isAfter(season.asOf())
                ? Sentence.of(
                    "Decide on the forecast by {}: no progesterone result can be there before.",
                    clock.dayAndTime(by))
                : Sentence.of(
                    "Decide on the forecast now: no progesterone result can be there before."),
            List.of(EngineStep.TEST_VALUE.id(), EngineStep.DEADLINE.id())));
  }

  /** To breed now, to order or book, or to arrange a day. */
  Optional<Action> breedOrBook() {
    if (breeding == null || !(breeding.close() || lateButFertile())) {
      return Optional.empty();
    }
    return breeding.first().flatMap(slot -> breedOrBook(slot, false));
  }

  /**
   * A mating of the plan that comes before the next test is not hidden behind it: one more does no
   * harm, and waiting may cost her best day.
   */
  Optional<Action> beforeTest() {
    if (breeding == null
        || test == null
        || !repeatable()
        || planned.standing().read().levels().isEmpty()) {
      return Optional.empty();
    }
    NextTest next = test;
    return soon()
        .filter(slot -> slot.middle().isBefore(next.at().toInstant()))
        .filter(slot -> !breeding.opposed(slot.day()))
        .map(
            slot ->
                new Action(
                    Now.BREED,
                    breed(slot),
                    because(),
                    List.of(Sentence.of("{} all the same.", TestAsked.of(next, season)))));
  }

  private boolean repeatable() {
    Semen semen = season.semenPlan().semen();
    return semen == Semen.NATURAL || semen == Semen.FRESH;
  }

  /** The same however closely ovulation is known, where no test is left to wait for. */
  Optional<Action> firstOfPlan() {
    return breeding == null
        ? Optional.empty()
        : breeding.first().flatMap(slot -> breedOrBook(slot, test == null));
  }

  /** A late bitch whose smear is full is bred at once, but not with semen that lives a day. */
  private boolean lateButFertile() {
    return planned.standing().read().lateWithFullSmear() && repeatable();
  }

  /**
   * @param anyhow whether a day is arranged however far off it is and however closely it is known
   */
  private Optional<Action> breedOrBook(Slot first, boolean anyhow) {
    List<String> because = breeding == null ? List.of() : breeding.becauseOf();
    double hours = Hours.between(season.asOf(), first.from());
    if (hours <= tools.value("planning.breed-within")) {
      if (breeding != null
          && breeding.opposed(first.day())
          && testDueToday()
          && !lateButFertile()) {
        return Optional.empty();
      }
      return Optional.of(new Action(Now.BREED, breed(first), because));
    }
    if (!first.deadlines().isEmpty()) {
      boolean testFirst = test != null && !test.resultAt().toInstant().isAfter(first.decideBy());
      return testFirst || forecast != null
          ? Optional.empty()
          : Optional.of(
              new Action(
                  Now.BOOK, new Commitments(season.semenPlan(), clock).headline(first), because));
    }
    boolean firm =
        breeding != null && breeding.dated().width() <= tools.value("planning.firm-width");
    boolean near = hours <= 24 * tools.value("planning.book-ahead");
    if (anyhow || (firm && near && !testBefore(first))) {
      return Optional.of(
          new Action(
              Now.BOOK,
              Sentence.of(
                  mates()
                      ? "Arrange to mate her on {}, {}."
                      : "Arrange to inseminate her on {}, {}.",
                  clock.day(first.middle()),
                  clock.span(first)),
              because));
    }
    return Optional.empty();
  }

  /** Whether a test is due well before a slot, so that it should be made first. */
  private boolean testBefore(Slot slot) {
    return test != null && Hours.between(test.at().toInstant(), slot.from()) > 24;
  }

  private boolean testDueToday() {
    return test != null && Hours.between(season.asOf(), test.at().toInstant()) <= 24;
  }

  private boolean mates() {
    return season.semenPlan().semen() == Semen.NATURAL;
  }
}
