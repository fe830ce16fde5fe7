package io.github.tiderule.api.record;

import java.time.Instant;

/**
 * A female in the record.
 *
 * @param owner key of the person she belongs to
 * @param handle what her owner calls her in cycle files, its {@code female.id}
 * @param document the {@code female} object of a cycle file, on one line
 * @param version counts the changes, from 1
 * @param shared whether the clinic may see her
 */
public record Female(
    String key,
    String owner,
    String handle,
    String document,
    int version,
    boolean shared,
    Instant createdAt,
    Instant changedAt) {}
