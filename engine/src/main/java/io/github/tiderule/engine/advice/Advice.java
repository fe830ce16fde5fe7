package io.github.tiderule.engine.advice;

import io.github.tiderule.engine.advice.reasoning.Query;
import io.github.tiderule.engine.advice.reasoning.Stamp;
import io.github.tiderule.engine.advice.reasoning.TraceLine;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * The answer to one cycle record: what to do, and in groups all that stands behind it.
 *
 * @param validUntil when the answer should be asked for again, at the latest
 * @param questions what must be answered before the season can be judged
 * @param cautions what to take care of, the gravest first
 */
public record Advice(
    Stamp stamp,
    OffsetDateTime asOf,
    OffsetDateTime validUntil,
    @Nullable String femaleId,
    Action action,
    List<Query> questions,
    List<Warning> cautions,
    AdviceTiming timing,
    AdviceBreeding breeding,
    AdviceTesting testing,
    AdviceCourse course,
    AdviceReasoning reasoning) {

  public Advice {
    questions = List.copyOf(questions);
    cautions = List.copyOf(cautions);
  }

  /** An answer that says what to do, and nothing else yet. */
  public static Advice of(
      Stamp stamp,
      OffsetDateTime asOf,
      OffsetDateTime validUntil,
      @Nullable String femaleId,
      Action action) {
    return new Advice(
        stamp,
        asOf,
        validUntil,
        femaleId,
        action,
        List.of(),
        List.of(),
        AdviceTiming.NONE,
        AdviceBreeding.NONE,
        AdviceTesting.NONE,
        AdviceCourse.NONE,
        AdviceReasoning.NONE);
  }

  public Advice withQuestions(List<Query> questions) {
    return new Advice(
        stamp,
        asOf,
        validUntil,
        femaleId,
        action,
        questions,
        cautions,
        timing,
        breeding,
        testing,
        course,
        reasoning);
  }

  public Advice withCautions(List<Warning> cautions) {
    return new Advice(
        stamp,
        asOf,
        validUntil,
        femaleId,
        action,
        questions,
        cautions,
        timing,
        breeding,
        testing,
        course,
        reasoning);
  }

  public Advice with(AdviceTiming timing) {
    return new Advice(
        stamp,
        asOf,
        validUntil,
        femaleId,
        action,
        questions,
        cautions,
        timing,
        breeding,
        testing,
        course,
        reasoning);
  }

  public Advice with(AdviceBreeding breeding) {
    return new Advice(
        stamp,
        asOf,
        validUntil,
        femaleId,
        action,
        questions,
        cautions,
        timing,
        breeding,
        testing,
        course,
        reasoning);
  }

  public Advice with(AdviceTesting testing) {
    return new Advice(
        stamp,
        asOf,
        validUntil,
        femaleId,
        action,
        questions,
        cautions,
        timing,
        breeding,
        testing,
        course,
        reasoning);
  }

  public Advice with(AdviceCourse course) {
    return new Advice(
        stamp,
        asOf,
        validUntil,
        femaleId,
        action,
        questions,
        cautions,
        timing,
        breeding,
        testing,
        course,
        reasoning);
  }

  public Advice with(AdviceReasoning reasoning) {
    return new Advice(
        stamp,
        asOf,
        validUntil,
        femaleId,
        action,
        questions,
        cautions,
        timing,
        breeding,
        testing,
        course,
        reasoning);
  }

  /** Every source its trace, its cautions and its days name, in alphabetical order, each once. */
  public List<String> sources() {
    return Stream.of(
            reasoning.trace().stream().map(TraceLine::sources),
            cautions.stream().map(Warning::sources),
            breeding.days().stream().flatMap(day -> day.reasons().stream()).map(Reason::sources))
        .flatMap(keys -> keys)
        .flatMap(List::stream)
        .distinct()
        .sorted()
        .toList();
  }
}
