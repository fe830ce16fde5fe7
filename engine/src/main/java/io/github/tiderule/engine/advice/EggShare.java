package io.github.tiderule.engine.advice;

/**
 * Share of her eggs met by live sperm while they can be fertilised.
 *
 * @param mean expected share
 * @param p10 its tenth percentile over where ovulation may lie
 */
public record EggShare(double mean, double p10) {}
