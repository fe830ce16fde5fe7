package io.github.tiderule.engine.advice.course;

import io.github.tiderule.rules.sentence.Sentence;
import java.time.LocalDate;
import java.time.OffsetDateTime;

/**
 * A whelping beside its forecast.
 *
 * @param whelpedOn the day she whelped
 * @param median to {@code p95}: the forecast, from what was known a week before she whelped
 * @param errorDays local noon of the whelping less the median of the forecast, days
 * @param within whether the day of whelping lies within the days of the 9-in-10 interval
 * @param ovulation ovulation as it is seen now, the whelping counted
 * @param text in words
 */
public record LookBack(
    LocalDate whelpedOn,
    OffsetDateTime median,
    OffsetDateTime p05,
    OffsetDateTime p95,
    double errorDays,
    boolean within,
    Quantiles ovulation,
    Sentence text) {}
