package io.github.tiderule.rules.semen;

import io.github.tiderule.rules.fact.semen.Route;
import io.github.tiderule.rules.fact.semen.Semen;

/**
 * An insemination that a sheet is made for: the file describes its semen, or it is close.
 *
 * @param semen fresh, chilled or frozen
 * @param route vaginal or transcervical
 */
public record InseminationDay(Semen semen, Route route) {}
