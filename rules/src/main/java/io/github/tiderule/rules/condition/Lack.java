package io.github.tiderule.rules.condition;

import io.github.tiderule.rules.sentence.Sentence;

/**
 * The one condition a rule is short of.
 *
 * @param missing what is missing, in plain words
 * @param distance how far off it is: 0 for an answer or a value not given, then the share by which
 *     a number misses its threshold, and 1 for an observation of which there is none
 */
public record Lack(Sentence missing, double distance) {}
