package io.github.tiderule.engine.advice;

import io.github.tiderule.rules.sentence.Sentence;
import org.jspecify.annotations.Nullable;

/**
 * What must be at what temperature, in degrees Celsius.
 *
 * @param semenC the semen's own; absent where nobody measured it
 * @param leastC the least that anything touching it may have; absent where only a sheet can say
 * @param mostC the most; absent where only a sheet can say
 * @param extenderShiftC by how much the extender is to be warmed, or cooled where negative; absent
 *     where either was not measured
 * @param text in words
 */
public record SemenTemperature(
    @Nullable Double semenC,
    @Nullable Double leastC,
    @Nullable Double mostC,
    @Nullable Double extenderShiftC,
    Sentence text) {}
