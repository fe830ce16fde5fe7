package io.github.tiderule.rules.kennel;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * The male, as far as he is known.
 *
 * @param bodyMassKg body mass in kilograms, positive, if known
 * @param provenSire whether he has sired a litter, if known
 */
public record Stud(
    @Nullable String name,
    @Nullable String breed,
    @Nullable Double bodyMassKg,
    @Nullable LocalDate bornOn,
    @Nullable Boolean provenSire) {}
