package io.github.tiderule.engine.action;

import io.github.tiderule.engine.advice.Action;
import io.github.tiderule.engine.advice.Action.Now;
import io.github.tiderule.engine.season.Read;
import io.github.tiderule.engine.season.Season;
import io.github.tiderule.rules.StageResult.Ruled;
import io.github.tiderule.rules.conclusion.reading.Held;
import io.github.tiderule.rules.conclusion.reading.Question;
import io.github.tiderule.rules.sentence.Part;
import io.github.tiderule.rules.sentence.Sentence;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Says which question is to be answered before anything is planned. */
final class AnswerChoice {

  private final Read read;
  private final Season season;

  AnswerChoice(Read read) {
    this.read = read;
    season = read.season();
  }

  /** The question, if one stands before every plan. */
  Optional<Question> asked() {
    return leading().map(Ruled::conclusion);
  }

  Optional<Action> action() {
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

  /**
   * A question about first blood or the latest result, which is held for it; of the only dose,
   * which nobody gets back, about any result that is held.
   */
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
                    || season.semenPlan().onlyDose()
                    || !drawn(ruled.conclusion().about()).isBefore(lastUsed.orElse(Instant.MIN)))
        .min(
            Comparator.comparing(
                    (Ruled<Question> ruled) ->
                        !ruled.conclusion().about().equals(Question.FIRST_BLOOD))
                .thenComparing(
                    ruled -> drawn(ruled.conclusion().about()), Comparator.reverseOrder()));
  }

  private Instant drawn(String id) {
    return season.observations().stream()
        .filter(observation -> observation.id().equals(id))
        .map(observation -> observation.at())
        .findFirst()
        .orElse(Instant.MIN);
  }
}
