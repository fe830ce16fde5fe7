package io.github.tiderule.rules.fact;

/** What somebody saw in the tube before inseminating. */
public record SemenLook(SemenColour colour) {}
