package io.github.tiderule.rules.kennel;

/**
 * The file tells of tests, of the last litter or of the male: the checks before a season matter.
 */
public record BeforeSeasonAsked() {}
