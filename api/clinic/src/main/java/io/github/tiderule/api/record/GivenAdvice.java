package io.github.tiderule.api.record;

import java.time.Instant;

/**
 * Advice as it was given.
 *
 * @param asOf the moment it was given for
 * @param person key of who asked for it
 * @param engine version of the engine, as on its stamp
 * @param rules hash of the rules, as on its stamp
 * @param cycleFile the cycle file it answers, as the season then was
 * @param answer the answer, to the last byte
 */
public record GivenAdvice(
    String key,
    String cycle,
    Instant givenAt,
    Instant asOf,
    String person,
    String engine,
    String rules,
    String cycleFile,
    String answer) {}
