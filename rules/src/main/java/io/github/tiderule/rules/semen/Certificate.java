package io.github.tiderule.rules.semen;

import org.jspecify.annotations.Nullable;

/**
 * What the freezing centre's certificate says of the frozen semen there is.
 *
 * @param units how many straws, vials or pellets there are, at least 1
 * @param spermPerUnitMillion million sperm in one of them, motile or not, if known
 * @param volumeMlPerUnit in millilitres, above 0, if known
 * @param progressivelyMotilePercent after thawing, 0–100, if known
 * @param normalPercent after thawing, 0–100, if known
 */
public record Certificate(
    FrozenUnit unit,
    int units,
    @Nullable Double spermPerUnitMillion,
    @Nullable Double volumeMlPerUnit,
    @Nullable Double progressivelyMotilePercent,
    @Nullable Double normalPercent) {}
