package io.github.tiderule.engine.advice.reasoning;

import io.github.tiderule.rules.sentence.Sentence;

/** A rule one condition short of speaking, and what it lacks. */
public record NotFired(String rule, String title, Sentence missing) {}
