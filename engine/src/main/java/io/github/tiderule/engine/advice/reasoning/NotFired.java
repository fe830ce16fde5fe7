package io.github.tiderule.engine.advice.reasoning;

/** A rule one condition short of speaking, and what it lacks. */
public record NotFired(String rule, String title, String missing) {}
