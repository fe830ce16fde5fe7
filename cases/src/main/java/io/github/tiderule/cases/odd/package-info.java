/**
 * Simulated seasons that leave the textbook, and how often the engine is confidently wrong about
 * them.
 *
 * <p>{@link Kind} names the ways of leaving it. {@link Truths} draws what is true of a female:
 * progesterone joined by straight lines on the log scale through drawn marks ({@link MarkedLevel}),
 * another family than the engine's model and than {@link io.github.tiderule.cases.cohort}, from
 * which only what is no part of a season's course is taken: laboratories, the reader of smears, the
 * calendar and the draws. {@link Keeping} is somebody who tests her as the trade does and types
 * what comes, with the slips of some kinds. The engine is asked on the evening of every result;
 * {@link Verdict} says what is wrong with an answer by the truth, and {@link KindScore} counts it.
 *
 * <p>The marks are set to published ranges where there are any: the LH peak at 1.5 to 3.5 ng/mL and
 * ovulation at 3 to 11 (concannon-1977, hollinshead-2019), one to 3.3 days apart (concannon-1977,
 * wildt-1978), LH bursts 3 to 9.5 days before the surge in some (wildt-1978), ovulation 3 to 31
 * days after first blood (hori-2012). Heights and lengths of plateaus, seasons that break off,
 * rises that fall again and all slips are this generator's own judgement of what keepers tell.
 */
@NullMarked
package io.github.tiderule.cases.odd;

import org.jspecify.annotations.NullMarked;
