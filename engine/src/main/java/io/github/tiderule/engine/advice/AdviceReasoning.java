package io.github.tiderule.engine.advice;

import io.github.tiderule.engine.advice.reasoning.DayCount;
import io.github.tiderule.engine.advice.reasoning.Disagreement;
import io.github.tiderule.engine.advice.reasoning.Influence;
import io.github.tiderule.engine.advice.reasoning.NotFired;
import io.github.tiderule.engine.advice.reasoning.ObservationNote;
import io.github.tiderule.engine.advice.reasoning.TraceLine;
import java.util.List;

/**
 * Why the answer is what it is.
 *
 * @param trace every step, in the order of the stages
 * @param notFired rules one condition short of speaking
 * @param influence one entry for each observation the timeline used, in time order
 * @param disagreements what schools disagree about and matters here
 * @param observationNotes observations that are held, discounted, converted or set aside, and why
 * @param dayCounts what rules of thumb make of the season, to hold the plan against
 */
public record AdviceReasoning(
    List<TraceLine> trace,
    List<NotFired> notFired,
    List<Influence> influence,
    List<Disagreement> disagreements,
    List<ObservationNote> observationNotes,
    List<DayCount> dayCounts) {

  /** Nothing said. */
  public static final AdviceReasoning NONE =
      new AdviceReasoning(List.of(), List.of(), List.of(), List.of(), List.of(), List.of());

  public AdviceReasoning {
    trace = List.copyOf(trace);
    notFired = List.copyOf(notFired);
    influence = List.copyOf(influence);
    disagreements = List.copyOf(disagreements);
    observationNotes = List.copyOf(observationNotes);
    dayCounts = List.copyOf(dayCounts);
  }

  public AdviceReasoning withTrace(List<TraceLine> trace) {
    return new AdviceReasoning(
        trace, notFired, influence, disagreements, observationNotes, dayCounts);
  }

  public AdviceReasoning withNotFired(List<NotFired> notFired) {
    return new AdviceReasoning(
        trace, notFired, influence, disagreements, observationNotes, dayCounts);
  }

  public AdviceReasoning withInfluence(List<Influence> influence) {
    return new AdviceReasoning(
        trace, notFired, influence, disagreements, observationNotes, dayCounts);
  }

  public AdviceReasoning withDisagreements(List<Disagreement> disagreements) {
    return new AdviceReasoning(
        trace, notFired, influence, disagreements, observationNotes, dayCounts);
  }

  public AdviceReasoning withObservationNotes(List<ObservationNote> observationNotes) {
    return new AdviceReasoning(
        trace, notFired, influence, disagreements, observationNotes, dayCounts);
  }

  public AdviceReasoning withDayCounts(List<DayCount> dayCounts) {
    return new AdviceReasoning(
        trace, notFired, influence, disagreements, observationNotes, dayCounts);
  }
}
