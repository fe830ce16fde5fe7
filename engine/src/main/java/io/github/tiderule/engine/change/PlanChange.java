package io.github.tiderule.engine.change;

import io.github.tiderule.engine.advice.Plan;
import io.github.tiderule.rules.fact.Worded;
import java.time.OffsetDateTime;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * How the plan changed.
 *
 * @param doses what became of each time of the earlier plan, in time order
 * @param added times of the later plan that the earlier one did not have
 */
public record PlanChange(
    Outcome outcome,
    @Nullable Plan before,
    @Nullable Plan after,
    List<DoseChange> doses,
    List<OffsetDateTime> added) {

  public PlanChange {
    doses = List.copyOf(doses);
    added = List.copyOf(added);
  }

  /** What became of the earlier plan as a whole. */
  public enum Outcome implements Worded {
    /** Neither answer has a plan. */
    NONE("none"),
    /** The later answer has the first plan. */
    MADE("made"),
    /** All that is left of it stands, and nothing was added. */
    STANDS("stands"),
    /** A time that was ahead is withdrawn or passed, or one was added. */
    REPLACED("replaced"),
    /** It is withdrawn, and there is none in its place. */
    WITHDRAWN("withdrawn"),
    /** It was carried out, and nothing more is planned. */
    DONE("done");

    private final String word;

    Outcome(String word) {
      this.word = word;
    }

    @Override
    public String word() {
      return word;
    }
  }
}
