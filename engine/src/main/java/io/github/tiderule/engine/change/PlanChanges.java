package io.github.tiderule.engine.change;

import io.github.tiderule.engine.advice.Plan;
import io.github.tiderule.engine.change.DoseChange.Fate;
import io.github.tiderule.engine.change.PlanChange.Outcome;
import io.github.tiderule.rules.fact.observation.BreedingDone;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Compares an earlier plan with what a later record and answer say. */
final class PlanChanges {

  /** Times closer than this are the same window. */
  private static final Duration SAME_WINDOW = Duration.ofHours(3);

  /** A breeding this close to a planned time was the planned one. */
  private static final Duration SAME_BREEDING = Duration.ofHours(12);

  private PlanChanges() {}

  static PlanChange between(@Nullable Plan was, Told after) {
    Plan is = after.advice().breeding().plan();
    List<OffsetDateTime> earlier = was == null ? List.of() : was.at();
    List<OffsetDateTime> later = is == null ? List.of() : is.at();
    List<DoseChange> doses =
        earlier.stream().map(at -> new DoseChange(at, fate(at, later, after))).toList();
    List<OffsetDateTime> added =
        later.stream().filter(at -> !near(at, earlier, SAME_WINDOW)).toList();
    return new PlanChange(outcome(was, is, doses, added), was, is, doses, added);
  }

  private static Outcome outcome(
      @Nullable Plan was, @Nullable Plan is, List<DoseChange> doses, List<OffsetDateTime> added) {
    if (was == null) {
      return is == null ? Outcome.NONE : Outcome.MADE;
    }
    boolean lost =
        doses.stream().anyMatch(one -> one.fate() == Fate.WITHDRAWN || one.fate() == Fate.PASSED);
    if (is == null) {
      return lost ? Outcome.WITHDRAWN : Outcome.DONE;
    }
    return lost || !added.isEmpty() ? Outcome.REPLACED : Outcome.STANDS;
  }

  private static Fate fate(OffsetDateTime at, List<OffsetDateTime> later, Told after) {
    if (near(at, later, SAME_WINDOW)) {
      return Fate.STANDS;
    }
    List<OffsetDateTime> done =
        after.cycle().observations().stream()
            .filter(BreedingDone.class::isInstance)
            .map(one -> one.at().atZone(after.cycle().zone()).toOffsetDateTime())
            .toList();
    if (near(at, done, SAME_BREEDING)) {
      return Fate.DONE;
    }
    Instant now = after.cycle().asOf();
    return at.toInstant().isBefore(now) ? Fate.PASSED : Fate.WITHDRAWN;
  }

  private static boolean near(OffsetDateTime at, List<OffsetDateTime> others, Duration reach) {
    return others.stream()
        .anyMatch(other -> Duration.between(at, other).abs().compareTo(reach) <= 0);
  }
}
