package io.github.tiderule.engine.advice.course;

import java.time.LocalDate;

/** Probability that something falls on a local day. */
public record DayProbability(LocalDate day, double probability) {}
