/**
 * The record: females, cycles, observations and every advice given, kept in one file or in a
 * database server. Knows nothing of HTTP.
 *
 * <p>What a person wrote is kept as the JSON it was written in; a cycle file is put together from
 * those texts and read by the one reader of cycle files, so that a record can hold nothing that a
 * cycle file cannot. Entries, revisions and advice are only ever added.
 */
@NullMarked
package io.github.tiderule.api.record;

import org.jspecify.annotations.NullMarked;
