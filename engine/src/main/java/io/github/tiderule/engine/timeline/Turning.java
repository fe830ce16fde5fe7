package io.github.tiderule.engine.timeline;

/**
 * Where the first day of cytological dioestrus may lie, given all evidence: times with weights that
 * sum to 1.
 *
 * @param at days after the anchor
 * @param weight not negative
 */
@SuppressWarnings("ArrayRecordComponent") // read only by the engine, in loops
public record Turning(double[] at, double[] weight) {}
