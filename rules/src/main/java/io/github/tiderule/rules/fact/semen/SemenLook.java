package io.github.tiderule.rules.fact.semen;

/**
 * What somebody saw in the tube before inseminating.
 *
 * @param bearsSperm whether sperm are looked for in this tube: the sperm-rich fraction or the whole
 */
public record SemenLook(SemenColour colour, boolean bearsSperm) {}
