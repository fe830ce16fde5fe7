package io.github.tiderule.rules.fact;

import java.time.LocalDate;

/**
 * A local day near term on which a caesarean might be planned.
 *
 * @param daysAfterOvulation days from the local day of the middle of ovulation to this one
 * @param chanceEarly probability that its noon lies before the first safe day after ovulation
 * @param chanceBegun probability that she whelps before its noon
 */
public record CaesareanDay(
    LocalDate day, int daysAfterOvulation, double chanceEarly, double chanceBegun) {}
