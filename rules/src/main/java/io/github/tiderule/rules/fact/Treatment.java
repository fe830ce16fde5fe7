package io.github.tiderule.rules.fact;

import java.time.LocalDate;

/** A treatment she was given. */
public record Treatment(TreatmentKind kind, LocalDate on) {}
