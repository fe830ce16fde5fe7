package io.github.tiderule.rules.kennel;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * A test one of the two dogs had.
 *
 * @param whose the female's or the stud's
 * @param condition what was looked for in words, such as a gene, if said
 */
public record HealthTest(
    Whose whose,
    HealthTestKind kind,
    LocalDate on,
    HealthTestResult result,
    @Nullable String condition) {}
