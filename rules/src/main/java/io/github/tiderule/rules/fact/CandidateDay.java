package io.github.tiderule.rules.fact;

import java.time.Instant;
import java.time.LocalDate;

/**
 * One day she could be bred on, with what the engine computed for it.
 *
 * @param from start of the day's better clock window
 * @param to end of that window
 * @param share expected share of her eggs met by one dose in that window, 0–1
 * @param shareP10 tenth percentile of that share over where ovulation may lie
 * @param daysAfterOvulation middle of the window less the median of ovulation, in days
 * @param probabilityOvulated probability that ovulation lies before the middle of the window
 * @param probabilityClosed probability that the cervix has closed to vaginal semen by then
 * @param chilledAgeHours age of chilled semen in that window, in hours; 0 for other semen
 */
public record CandidateDay(
    LocalDate day,
    Instant from,
    Instant to,
    double share,
    double shareP10,
    double daysAfterOvulation,
    double probabilityOvulated,
    double probabilityClosed,
    double chilledAgeHours) {}
