/**
 * The readers' report: how the corpus, the published figures, the simulated cohorts and the rules
 * stand, as one page in two forms. {@link ReadersReport} runs everything and writes it.
 */
@NullMarked
package io.github.tiderule.cases.report;

import org.jspecify.annotations.NullMarked;
