package io.github.tiderule.engine.change;

import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.advice.Advice;

/** A cycle record with the advice that was given on it. */
public record Told(CycleRecord cycle, Advice advice) {}
