package io.github.tiderule.engine.advice.course;

import io.github.tiderule.rules.sentence.Sentence;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * Something of a pregnancy that is past.
 *
 * @param daysAfterOvulation from the local day of the middle of ovulation
 * @param text in words without a full stop
 * @param observation id of what it was read from; absent where the outcome says so
 */
public record Happened(
    HappenedKind kind,
    LocalDate on,
    int daysAfterOvulation,
    Sentence text,
    @Nullable String observation) {}
