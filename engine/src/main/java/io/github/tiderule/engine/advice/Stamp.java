package io.github.tiderule.engine.advice;

/**
 * Which engine and which rules gave an answer.
 *
 * @param engine version of the engine
 * @param rules {@code sha256:} and the hash of rules, parameters and sources
 */
public record Stamp(String engine, String rules) {}
