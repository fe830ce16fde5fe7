package io.github.tiderule.api.picture;

import java.time.OffsetDateTime;

/**
 * One number of a curve, to stand in a table beside it.
 *
 * @param observation id of the observation
 * @param at when it was drawn, seen or done, in the zone of the season
 * @param level whether it is a progesterone value or band
 * @param what what it is, as in {@code progesterone} or {@code smear}
 * @param asReported as it was written, with its unit
 * @param ngPerMl in ng/mL; empty where it is no concentration or its unit is missing
 * @param nmolPerL in nmol/L; empty likewise
 * @param series laboratory and method; empty where there is none
 * @param use {@code taken}, {@code held}, {@code discounted} or {@code set-aside}
 */
public record CurveRow(
    String observation,
    OffsetDateTime at,
    boolean level,
    String what,
    String asReported,
    String ngPerMl,
    String nmolPerL,
    String series,
    String use) {}
