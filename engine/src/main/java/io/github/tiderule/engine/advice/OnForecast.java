package io.github.tiderule.engine.advice;

import io.github.tiderule.rules.sentence.Sentence;
import java.time.OffsetDateTime;

/**
 * A decision that falls due before the next result can be there.
 *
 * @param decideBy when the plan's first deadline passes
 * @param resultAt when the next progesterone result could be there
 * @param acting expected egg share of acting on the forecast
 * @param waiting expected egg share of waiting for the result
 * @param actingLoses expected egg share acting loses where waiting would have done better
 * @param waitingLoses expected egg share waiting loses where acting would have done better
 * @param text in words
 */
public record OnForecast(
    OffsetDateTime decideBy,
    OffsetDateTime resultAt,
    double acting,
    double waiting,
    double actingLoses,
    double waitingLoses,
    Mistake cheaperMistake,
    Sentence text) {}
