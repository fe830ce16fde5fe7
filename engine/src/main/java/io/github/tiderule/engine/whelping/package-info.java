/**
 * When she whelps: a density over the beginning of whelping, W, and what is counted back from it.
 *
 * <p><b>What this package may know:</b> the posterior of ovulation ω and of the shift to dioestrus
 * δ from the timeline, what was seen in pregnancy as numbers on the same axis, and the parameters
 * of scope {@code whelping}. No rule, no calendar day, and no mating but for its lateness. Times
 * are days after the anchor; {@code N(x; m, s)} is a normal density.
 *
 * <h2>Which law, and why the published ones are not multiplied</h2>
 *
 * <p>Three laws are published: 63.1 ± 2.1 d from ovulation (mir-2011), 65 d from the LH peak with a
 * spread of 1.9 d (hollinshead-2017), 57 d from the first day of dioestrus, within one and two
 * whole days in 88 and 99 % (decramer-2017; the 57 is from memory). They are three readings of one
 * pregnancy and share its ovulation: the LH peak lies 2 d before it and dioestrus 6 d after, so all
 * three have the same middle. To multiply their densities would count one thing three times and
 * promise a precision nobody has measured.
 *
 * <p><b>Law of ovulation.</b> As long as no smear has seen the shift, W = ω + {@code
 * after-ovulation} + litter + breed + late + N(0, {@code sd}), over the posterior of ω. The law of
 * the LH peak adds nothing to it: the timeline has already turned every sign of the peak into ω.
 * The spread is the published 2.1 d less an ordinary error of dating ovulation, since that error is
 * in the posterior of ω.
 *
 * <p><b>Chain of the shift.</b> Once the shift was seen (both smears on either side of it), W = δ +
 * {@code after-dioestrus} + late + N(0, {@code after-dioestrus-sd}), over the posterior of δ, which
 * holds the smears and, through its lag from ovulation, all that dated ovulation. Given δ, ω says
 * nothing more. Progesterone thus sharpens δ where smears were days apart, and is not counted
 * again.
 *
 * <p>The two laws cannot both be exact: with dioestrus 6 ± 0.7 d after ovulation (holst-1974, from
 * memory) the chain implies 1.2 d from ovulation to whelping, less than the published 1.9 to 2.1.
 * Either the studies from ovulation hold more dating error than is taken off here, or lag and
 * pregnancy differ together. Both published spreads stand, each where its own observation was made;
 * nothing is averaged. Without the shift the wider one is used.
 *
 * <h2>Shifts</h2>
 *
 * <p>Litter (eilts-2005): with n pups counted, n ≤ {@code litter.small} adds {@code litter.longer}
 * (1 − p), more take off {@code litter.longer} p, p = {@code litter.small-share}, so that the mean
 * over litters stays. Breed: three breed means of eilts-2005 less their mean; their own origin, the
 * first rise, is defined otherwise than in kutzler-2003, so only differences are used. Litter and
 * breed shift the law of ovulation only: none was published from the shift of the smear, whose
 * spread over all breeds leaves little room. Late (tsutsui-2009): with the first breeding b days
 * after ω, min({@code late.most}, max(0, b − {@code late.from})), for each ω by itself: the eggs
 * waited, and so does whelping.
 *
 * <h2>What is seen in pregnancy</h2>
 *
 * <p>Each observation multiplies the density by a likelihood of W; they are independent given W.
 *
 * <ul>
 *   <li>Fetal measurements at t, mean of all fetuses x mm: days left d = (at-term − x)/growth, from
 *       the line for her size (luvoni-2000, from memory, for small and medium-sized bitches; that
 *       of German Shepherds, cecchetto-2017, for large ones). (1 − o) N(W − t; d, s) + o/{@code
 *       scan.spread}, o = {@code scan.odd}, s as beccaglia-2012 found it: {@code
 *       scan.cavity-early-sd} with d ≥ {@code scan.early-days}, {@code scan.cavity-sd} later,
 *       {@code scan.skull-sd}, and {@code scan.skull-late-sd} with d &lt; {@code scan.late-days}.
 *       Not read outside {@code scan.*-days}. One litter and one hand err together: each of n
 *       measurements counts with the power 1/(1 + (n − 1) {@code scan.shared}).
 *   <li>Fall of temperature (tsutsui-1982): the first reading of a last run that lies {@code
 *       temperature.own-fall} or more below the mean of the readings before it; the fall lies
 *       evenly between the reading before it, at most {@code temperature.gap-hours}, and it. N(W −
 *       fall; {@code before-hours}, {@code sd-hours}) with a share {@code temperature.false} flat
 *       over {@code temperature.chart-days}. No fall, and no reading before it, says nothing.
 *   <li>Progesterone near term, u = W − t days before whelping, by radioimmunoassay
 *       (decramer-2018), chemiluminescence (nothling-2022) and dry slide (nothling-fvs-2022) on the
 *       method's own scale; others carried over to radioimmunoassay, more widely. A number counts
 *       as its published class alone (below 1, below 2.7, from 2.7 on, from 5 on; by dry slide
 *       between two ends of its published spans); the likelihood is the probability of that class.
 *       For it, ln of the level joins the parameters at 0, 1, 2, 4 and 8 days in straight lines and
 *       stays level beyond; log-normal with {@code progesterone.log-sd}, {@code dry-slide-log-sd}
 *       or {@code other-log-sd}; a share {@code late-fall} of the method is log-normal about {@code
 *       late-level} whatever u is, which is how some are in labour within twelve hours at 2.7 ng/mL
 *       and more. Levels are set so that, drawn evenly over the last four days, the published
 *       shares come out: below 2.7 within two days, below 1 within one, and at 2.7 and at 5 and
 *       more among those within half a day. At eight days they follow hinderer-2021 and
 *       kirchhoff-2016.
 *   <li>She was still pregnant at her latest observation: W lies after it; and before the first pup
 *       seen. Nor had any pup come, that anybody told of, when it is asked: W lies after that too,
 *       unless less than {@code untold} of the law is left, where she rather whelped and nobody
 *       wrote it down.
 * </ul>
 *
 * <p>Temperature, progesterone and the moment it is asked count from {@code term.from} days after
 * the middle of ovulation. What is seen in pregnancy moves W, never ω: the plan and its egg shares
 * are over by then.
 *
 * <h2>Computation</h2>
 *
 * <p>W lies on multiples of an hour. The density is the sum over the points of ω or δ, times the
 * likelihoods; no sampling. Where nothing but ω is known the timeline's own convolution is used, on
 * its own lattice.
 *
 * <h2>Counted back</h2>
 *
 * <p>A caesarean at local noon c is early with probability P(ω &gt; c − {@code early-before}).
 * After whelping at w, ω has the density p(ω) N(w; ω + {@code after-ovulation} + late, {@code sd}).
 */
@NullMarked
package io.github.tiderule.engine.whelping;

import org.jspecify.annotations.NullMarked;
