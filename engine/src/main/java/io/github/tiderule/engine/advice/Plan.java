package io.github.tiderule.engine.advice;

import io.github.tiderule.rules.sentence.Sentence;
import java.time.OffsetDateTime;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The times to breed at.
 *
 * @param at in time order, at least one
 * @param eggShare for all of them together, with breedings already done
 * @param orderBy last safe time to order, where something is ordered
 * @param becauseOf ids of the rules behind it
 * @param alternatives other plans worth knowing, at most three
 * @param commitments what must be done for it and by when, in time order
 * @param forecast present where a decision falls due before the next result
 * @param notes what else there is to know of it, in words
 */
public record Plan(
    List<OffsetDateTime> at,
    EggShare eggShare,
    @Nullable OffsetDateTime orderBy,
    List<String> becauseOf,
    List<Alternative> alternatives,
    List<Commitment> commitments,
    @Nullable OnForecast forecast,
    List<Sentence> notes) {

  public Plan {
    at = List.copyOf(at);
    becauseOf = List.copyOf(becauseOf);
    alternatives = List.copyOf(alternatives);
    commitments = List.copyOf(commitments);
    notes = List.copyOf(notes);
  }

  /** Another plan, and what it costs or saves. */
  public record Alternative(List<OffsetDateTime> at, EggShare eggShare, Sentence note) {

    public Alternative {
      at = List.copyOf(at);
    }
  }
}
