package io.github.tiderule.engine;

import io.github.tiderule.engine.advice.Action;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.Commitment;
import io.github.tiderule.engine.season.Clock;
import io.github.tiderule.rules.conclusion.reading.PossibleReading;
import io.github.tiderule.rules.conclusion.reading.Question;
import io.github.tiderule.rules.fact.observation.Observation;
import io.github.tiderule.rules.fact.observation.Progesterone;
import io.github.tiderule.rules.sentence.Part;
import io.github.tiderule.rules.sentence.Sentence;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

/** What would be told if a result that is asked about were read in one way or the other. */
final class Rereading {

  private final CycleRecord cycle;
  private final Function<CycleRecord, Advice> answered;

  /**
   * @param answered the advice on a record, in which nothing is read again
   */
  Rereading(CycleRecord cycle, Function<CycleRecord, Advice> answered) {
    this.cycle = cycle;
    this.answered = answered;
  }

  /**
   * An action that asks for an answer, with what either answer would lead to, and by when it is
   * wanted; the same action where no reading can be tried.
   */
  Action told(Action asked, Question question, Clock clock) {
    List<Sentence> then = new ArrayList<>();
    Optional<Instant> soonest = Optional.empty();
    for (PossibleReading reading : question.readings()) {
      Optional<CycleRecord> record = read(question.about(), reading);
      if (record.isEmpty()) {
        continue;
      }
      Advice advice = answered.apply(record.get());
      then.add(
          Sentence.of(
              "As {} {}: {}",
              value(question.about(), reading),
              reading.unit(),
              first(advice, clock)));
      soonest = Stream.concat(soonest.stream(), due(advice)).min(Comparator.naturalOrder());
    }
    return then.isEmpty()
        ? asked
        : new Action(
            asked.now(),
            soonest.isEmpty()
                ? asked.headline()
                : Sentence.of(
                    "Phone the laboratory before {} and ask for the unit of {}: two plans hang on"
                        + " it.",
                    clock.dayAndTime(soonest.get()),
                    Part.key(question.about())),
            asked.because(),
            then);
  }

  /** What is due first for the plan, or else what leads the answer. */
  private static Sentence first(Advice advice, Clock clock) {
    return advice.action().now() != Action.Now.BOOK || advice.breeding().plan() == null
        ? advice.action().headline()
        : advice.breeding().plan().commitments().stream()
            .filter(one -> one.by().isAfter(advice.asOf()))
            .findFirst()
            .map(
                one -> Sentence.of("{} by {}.", one.text(), clock.dayAndTime(one.by().toInstant())))
            .orElse(advice.action().headline());
  }

  private static Stream<Instant> due(Advice advice) {
    return advice.breeding().plan() == null
        ? Stream.empty()
        : advice.breeding().plan().commitments().stream()
            .map(Commitment::by)
            .map(by -> by.toInstant())
            .filter(by -> by.isAfter(advice.asOf().toInstant()));
  }

  private Part value(String about, PossibleReading reading) {
    return Part.figure(
        reading.value() != null
            ? reading.value()
            : cycle.observations().stream()
                .filter(one -> one.id().equals(about))
                .filter(Progesterone.class::isInstance)
                .mapToDouble(one -> ((Progesterone) one).value())
                .findFirst()
                .orElseThrow());
  }

  private Optional<CycleRecord> read(String about, PossibleReading reading) {
    boolean there =
        cycle.observations().stream()
            .anyMatch(one -> one.id().equals(about) && one instanceof Progesterone);
    return there
        ? Optional.of(
            new CycleRecord(
                cycle.asOf(),
                cycle.zone(),
                cycle.female(),
                cycle.earlierCycles(),
                cycle.treatments(),
                cycle.firstBlood(),
                cycle.observations().stream().map(one -> read(one, about, reading)).toList(),
                cycle.semenPlan(),
                cycle.laboratory(),
                cycle.outcome(),
                cycle.insemination(),
                cycle.background()))
        : Optional.empty();
  }

  /** The result as it would be entered once the report was asked, its words with it. */
  private static Observation read(Observation one, String about, PossibleReading reading) {
    return one.id().equals(about) && one instanceof Progesterone result
        ? new Progesterone(
            result.id(),
            result.at(),
            result.reportedAt(),
            reading.value() != null ? reading.value() : result.value(),
            result.comparator(),
            reading.unit(),
            result.method(),
            result.laboratory(),
            result.specimen(),
            result.tube(),
            result.handling(),
            reading.unit().word())
        : one;
  }
}
