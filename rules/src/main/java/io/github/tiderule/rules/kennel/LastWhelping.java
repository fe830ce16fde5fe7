package io.github.tiderule.rules.kennel;

import java.time.LocalDate;

/** The day she last whelped. */
public record LastWhelping(LocalDate on) {}
