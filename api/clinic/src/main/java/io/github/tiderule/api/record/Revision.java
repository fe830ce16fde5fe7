package io.github.tiderule.api.record;

import java.time.Instant;

/**
 * What a female or a season was once said to be.
 *
 * @param version which change of it this was, from 1
 * @param document what was said, on one line
 * @param person key of who said it
 */
public record Revision(int version, String document, String person, Instant at) {}
