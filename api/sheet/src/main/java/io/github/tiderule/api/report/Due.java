package io.github.tiderule.api.report;

import java.time.OffsetDateTime;

/**
 * One thing that is due.
 *
 * @param at what it is sorted by
 * @param when in words
 * @param what in words
 */
public record Due(OffsetDateTime at, String when, String what) {}
