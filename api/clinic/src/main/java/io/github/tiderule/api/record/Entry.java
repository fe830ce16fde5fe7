package io.github.tiderule.api.record;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * One entry about one observation. What an observation is now, its last entry says.
 *
 * @param cycle key of the season
 * @param number counts the entries of the season, from 1
 * @param observation the observation's id
 * @param replaces number of the entry this one corrects or takes back; absent for a first one
 * @param document the observation as it stands in a cycle file, on one line; absent when taken back
 * @param reason why it was corrected or taken back; absent for a first one
 * @param person key of who made the entry
 */
public record Entry(
    String cycle,
    int number,
    String observation,
    Change change,
    @Nullable Integer replaces,
    @Nullable String document,
    @Nullable String reason,
    String person,
    Instant at) {}
