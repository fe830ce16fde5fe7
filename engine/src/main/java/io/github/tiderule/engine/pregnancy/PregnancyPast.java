package io.github.tiderule.engine.pregnancy;

import io.github.tiderule.engine.advice.course.Happened;
import io.github.tiderule.engine.advice.course.HappenedKind;
import io.github.tiderule.engine.season.Clock;
import io.github.tiderule.rules.fact.Outcome;
import io.github.tiderule.rules.fact.observation.BreedingDone;
import io.github.tiderule.rules.fact.observation.Observation;
import io.github.tiderule.rules.fact.observation.PregnancyScan;
import io.github.tiderule.rules.fact.observation.Radiograph;
import io.github.tiderule.rules.fact.observation.Sign;
import io.github.tiderule.rules.fact.observation.SignKind;
import io.github.tiderule.rules.fact.semen.Semen;
import io.github.tiderule.rules.sentence.Part;
import io.github.tiderule.rules.sentence.Sentence;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What is past of a pregnancy, from what was seen and what became of it. */
final class PregnancyPast {

  private final Clock clock;
  private final LocalDate ovulated;
  private final List<Happened> happened = new ArrayList<>();

  private PregnancyPast(Clock clock, LocalDate ovulated) {
    this.clock = clock;
    this.ovulated = ovulated;
  }

  /**
   * In the order of time.
   *
   * @param ovulated local day of the middle of ovulation
   */
  static List<Happened> of(
      List<Observation> accepted, Outcome outcome, Clock clock, LocalDate ovulated) {
    PregnancyPast past = new PregnancyPast(clock, ovulated);
    accepted.stream()
        .sorted(Comparator.comparing(Observation::at).thenComparing(Observation::id))
        .forEach(past::add);
    @Nullable LocalDate whelpedOn = outcome.whelpedOn();
    if (whelpedOn != null) {
      past.add(HappenedKind.WHELPED, whelpedOn, whelped(outcome), null);
    }
    return past.happened.stream().sorted(Comparator.comparing(Happened::on)).toList();
  }

  private void add(Observation seen) {
    if (seen instanceof BreedingDone done) {
      add(HappenedKind.BREEDING, seen, bred(done));
    } else if (seen instanceof PregnancyScan scan) {
      add(HappenedKind.SCAN, seen, counted("Scan: " + words(scan), scan.fetuses()));
    } else if (seen instanceof Radiograph radiograph) {
      add(
          HappenedKind.RADIOGRAPH,
          seen,
          radiograph.fetuses() == null
              ? Sentence.of(
                  radiograph.shown()
                      ? "Radiograph, skeletons seen"
                      : "Radiograph, no skeleton seen")
              : counted("Radiograph", radiograph.fetuses()));
    } else if (seen instanceof Sign sign
        && sign.present()
        && sign.sign() == SignKind.PUP_BORN
        && happened.stream().noneMatch(one -> one.kind() == HappenedKind.FIRST_PUP)) {
      add(HappenedKind.FIRST_PUP, seen, Sentence.of("First pup seen"));
    }
  }

  private static Sentence bred(BreedingDone done) {
    Sentence how =
        done.semen() == Semen.NATURAL
            ? Sentence.of("Bred by mating")
            : Sentence.of("Bred with {} semen", done.semen());
    Sentence whose =
        done.sire() == null ? how : Sentence.of("{}, by {}", how, Part.quote(done.sire()));
    return done.note() == null ? whose : Sentence.of("{} ({})", whose, Part.quote(done.note()));
  }

  private void add(HappenedKind kind, Observation seen, Sentence text) {
    add(kind, seen.at().atZone(clock.zone()).toLocalDate(), text, seen.id());
  }

  private void add(HappenedKind kind, LocalDate on, Sentence text, @Nullable String observation) {
    int days = (int) ChronoUnit.DAYS.between(ovulated, on);
    happened.add(new Happened(kind, on, days, text, observation));
  }

  private static String words(PregnancyScan scan) {
    return switch (scan.finding()) {
      case PREGNANT -> "pregnant";
      case HEARTBEATS -> "heartbeats";
      case NO_HEARTBEAT -> "no heartbeat";
      case NOT_PREGNANT -> "not pregnant";
    };
  }

  private static Sentence counted(String template, @Nullable Integer pups) {
    return pups == null || pups == 0
        ? Sentence.of(template)
        : Sentence.of(template + ", {:# pup|# pups} counted", pups);
  }

  private static Sentence whelped(Outcome outcome) {
    Integer size = outcome.litterSize();
    Integer alive = outcome.pupsBornAlive();
    if (size == null) {
      return alive == null
          ? Sentence.of("She whelped")
          : Sentence.of("She whelped, {} born alive", alive);
    }
    return alive == null
        ? Sentence.of("She whelped, {:# pup|# pups}", size)
        : Sentence.of("She whelped, {:# pup|# pups}, {} born alive", size, alive);
  }
}
