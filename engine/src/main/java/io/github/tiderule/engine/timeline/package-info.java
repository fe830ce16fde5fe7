/**
 * The estimator: an exact posterior over the LH peak λ and ovulation ω of one season.
 *
 * <p><b>What this stage may know:</b> accepted observations as numbers on a time axis, the day of
 * first blood, earlier seasons, and the parameters of scope {@code timeline}, {@code
 * reading.factor}, and the tables {@code curve}, {@code assay}, {@code plateau} and {@code
 * neutrophils}. It knows no rule, no semen and no calendar day.
 *
 * <p>Time is in days after an anchor, a midnight in UTC. All levels are natural logs of ng/mL.
 * Parameters are named without their scope; each row of the parameter files says where its value
 * comes from and how it was read. {@code N(x; m, s)} is a normal density with mean m and standard
 * deviation s, Φ the standard normal distribution function.
 *
 * <h2>Courses</h2>
 *
 * <p>A season takes one of six courses, each with its prior. On four she ovulates: <i>ordinary</i>
 * (what the others leave); with a <i>plateau</i>, a rest before the surge ({@code plateau.weight});
 * <i>irregular</i>, which is like none of the others ({@code irregular.weight}) and widens the
 * interval where nothing fits; <i>failing</i>, ordinary until after ovulation and then an early
 * fall ({@code failing.weight}), so that a fall does not take back an ovulation that was seen. On
 * two she does not: <i>broken off</i>, a rise that falls back ({@code broken-off.weight}), and
 * <i>silent</i>, low throughout ({@code no-ovulation.weight}).
 *
 * <h2>Prior of the LH peak</h2>
 *
 * <p>With first blood known, x = λ − (local noon of first blood). ln(x + {@code onset.shift}) is
 * normal with mean ln({@code onset.median} + {@code onset.shift}) and standard deviation s, which
 * is {@code onset.log-sd} when blood was seen, {@code onset.estimated-log-sd} when estimated,
 * {@code onset.doubtful-log-sd} when a day is named but its certainty unknown; a share {@code
 * onset.wide-weight} has standard deviation max({@code onset.wide-log-sd}, s) about the same mean.
 * Earlier seasons of hers with known ovulation, k of them, with y = ln(ovulation − first blood −
 * {@code lag.mean} + shift): the first part's mean becomes the precision-weighted mean of the
 * population's (variance b² = {@code onset.between-bitch-log-sd}²) and theirs (variance w²/k, w =
 * {@code onset.within-bitch-log-sd}), its variance 1/(1/b² + k/w²) + w² + (s² − {@code
 * onset.log-sd}²). A season whose ovulation is counted back instead, {@code smear.dioestrus-lag}
 * days from the shift of the smear or else {@code whelping.after-ovulation} from whelping, counts
 * with variance w² + (e/(x + {@code onset.shift}))² in place of w², e the spread of what it is
 * counted from, x its days to the LH peak. Support: {@code onset.earliest} to {@code onset.latest}
 * days after first blood. A plateau of D days may put the surge off: there the prior of λ is ½ p(λ)
 * + ½ p(λ − D), p being that of the others. (hori-2012, vanhaaften-1989; within-bitch spread is our
 * own judgement, larger than hori-2012 says, because copying last season's day is known to fail.)
 *
 * <p>With first blood unknown the density is flat from {@code onset.unknown-before} days before the
 * first observation to {@code onset.unknown-after} days after now, with a share {@code
 * onset.unknown-long-weight} flat over the time from {@code onset.unknown-long-before} to {@code
 * onset.unknown-before} days before it; each edge softened as Φ of the distance in days.
 *
 * <h2>Lag</h2>
 *
 * <p>ω − λ is normal ({@code lag.mean}, {@code lag.sd}) cut off at {@code lag.min} and {@code
 * lag.max}. (concannon-1977, wildt-1978, hase-2000)
 *
 * <h2>Progesterone</h2>
 *
 * <p>Population curve m(τ), τ days after the LH peak, on the radioimmunoassay scale: log values of
 * table {@code curve} joined by a monotone cubic ({@link
 * io.github.tiderule.engine.timeline.MonotoneCurve}). Ordinary course: ln m(τ₁ + ρ (τ − τ₁)) with
 * ln ρ normal (0, {@code rate.log-sd}), a share {@code rate.wide-weight} normal (0, {@code
 * rate.wide-log-sd}), both cut off at 3.75 {@code rate.log-sd}, and τ₁ = {@code rate.pivot}, where
 * courses of all speeds cross: the published spread at the peak and two days later is the same
 * (concannon-1977). After τ₁ ln ρ is held within ± {@code rate.most-after}: slow and fast seasons
 * are so while they come up to the surge. Irregular and failing courses and plateaus have ρ = 1.
 * Plateau of D days at level h, table {@code plateau} with its weights normalised: ¼ ln(m(τ)⁴ + (h
 * Φ((τ + D)/0.75))⁴). Irregular: the ordinary course with {@code irregular.log-sd} and {@code
 * irregular.days} in place of {@code drift.log-sd} and {@code drift.days}. Failing, beginning F
 * days after the peak, F from {@code failing.first} by {@code failing.step} to {@code
 * failing.last}, all alike: ln(b + (m(τ) − b) e^(−v s)) with b = {@code level.basal}, v = {@code
 * failing.speed}, s = 0.75 ln(1 + e^((τ − F)/0.75)). Broken off: ln(b + h e^(−½ (t/s)²)), t days
 * after its top, which has the prior of the LH peak; s {@code broken-off.short} or {@code
 * broken-off.long}, h one of four levels from {@code broken-off.low} to {@code broken-off.high},
 * each as many times the one before; all alike. Silent: ln {@code no-ovulation.level} at all times.
 *
 * <p>With M the log course at a result drawn τ after the peak (for ρ: τ' = τ₁ + ρ (τ − τ₁), else τ'
 * = τ; for a broken-off course τ' = 0), base share c = min(1, {@code level.basal}·e^−M): the log
 * level is M + c·β + (1 − c)(1 + {@code level.luteal-growth}·clamp((τ' − 4)/4, 0, 1))·α, with β
 * normal (0, {@code level.baseline-log-sd}) and α normal (0, {@code level.rise-log-sd}). On a
 * silent course it is M + γ, γ normal (0, {@code no-ovulation.log-sd}). This is the sum of a basal
 * and a rising part, made linear in the logs, so that β and α can be integrated in closed form.
 *
 * <p>Method (table {@code assay}): a true level e^L reads as intercept + slope·e^L, at least 0.25
 * e^L where the intercept is not 0; deviations of the log level are multiplied by the elasticity
 * slope·e^M/(intercept + slope·e^M), taken at M (1 where the reading is held at its least). Where
 * published comparisons of one method disagree, its ways are alternatives with their weights, one
 * for each laboratory-and-method series. Each series has a log scale of its own, normal (0, {@code
 * scaleLogSd}). So values of two laboratories share the bitch, never a line. Where {@code
 * laboratory.*-log-sd} of a method is above 0, its laboratory's scale was learned: slope {@code
 * reading.factor.*}, intercept 0 and this spread stand in place of all its ways.
 *
 * <p>A scale is learned from n sera that the laboratory and another measured. Pairs with a value
 * below {@code laboratory.least-level}, and those whose log ratio lies {@code laboratory.odd-log}
 * from the median, are left out. With way i of the other laboratory the log scale is the mean of ln
 * y − ln(true level that way i reads as x), with variance scaleLogSd(i)² + s²/n, s² the mean of the
 * two cv² for eight pairs and of what is seen, by degrees of freedom; with way j of its own method
 * it is normal (ln slope(j), scaleLogSd(j)). What is learned is the mean and the spread over all i
 * and j by weights and how well they agree, and from {@code laboratory.least-pairs} pairs on it is
 * proposed.
 *
 * <p>Errors of a number v, on the log: swing, with covariance {@code swing.log-sd}² e^(−|Δt|/{@code
 * swing.days}) between any two results; drift of her own course from the common shape, with
 * covariance {@code drift.log-sd}² exp(−½ (Δt/{@code drift.days})²), since published courses differ
 * smoothly; its own independent variance {@code pulse.log-sd}² + cv² + ({@code assay.floor}/max(v,
 * {@code assay.floor}))², cv from the table by v; handling that reads low adds a bias of {@code
 * handling.log-bias} and a variance of {@code handling.log-sd}², other doubts {@code
 * noisy.log-sd}². A number below {@code assay.least} counts as the limit that it lies below that.
 *
 * <p>Odd values: each number is grossly wrong with probability {@code odd.weight}, then its
 * variance grows by {@code odd.log-sd}². All numbers right, one odd and two odd are summed; three
 * are not thought of. So one or two wrong values cannot carry the date, and they are named.
 *
 * <p>Fit: with the LH peak, the course, its speed and the ways to read given, n numbers y of which
 * none is odd are normal about μ with covariance Σ of all of the above, so that (y − μ)'Σ⁻¹(y − μ)
 * is χ² with n degrees of freedom. The fit is the mean of the probability of more than that over
 * the posterior of all courses but the irregular one: 1 where there is no number, about one half
 * where all is as it should be, near 0 where numbers taken as right lie on no course. It finds
 * fault, and moves nothing.
 *
 * <p>Limits and bands: probability that the level lies between their edges given the numbers. Their
 * swing and drift are independent (a limit says too little to follow them): own variance {@code
 * swing.log-sd}² + {@code drift.log-sd}² + the same terms as above with v the lower edge, or the
 * upper where the lower is 0, plus {@code kit.log-sd}² for a kit's band; a kit shares its scale
 * with other bands only. Each is grossly wrong with probability {@code odd.weight} and then counts
 * ½; what it then weighs of the whole is how odd it looks.
 *
 * <h2>LH tests, folds, signs</h2>
 *
 * <p>These speak of λ, d days before the observation. LH positive: min(0.99, {@code
 * lh.false-positive} + {@code lh.burst}·[Φ((d + {@code lh.burst-first})/{@code lh.burst-edge}) −
 * Φ((d + {@code lh.burst-last})/{@code lh.burst-edge})] + {@code lh.sensitivity}·[Φ((d + {@code
 * lh.surge-before})/{@code lh.rise-edge}) − Φ((d − {@code lh.surge-after})/{@code lh.fall-edge})]).
 * Tests are independent given λ. Folds: states follow each other at {@code folds.*} days with
 * spread {@code folds.sd}; the chance of a state is the difference of two Φ, with a share {@code
 * folds.misread} of one in five. Signs: with A her own first acceptance after λ, normal (0, {@code
 * signs.stand-sd}), she accepts with G = Φ((d − A)/{@code signs.stand-edge})(1 − Φ((d − {@code
 * signs.stand-end})/{@code signs.stand-end-sd})); stands, refuses and flags have chances from
 * {@code signs.*-before} at G = 0 to {@code signs.*-during} at G = 1, in a straight line; one A for
 * all signs of a season. Vulva softens from {@code signs.vulva-before} to {@code signs.vulva-after}
 * with Φ((d − {@code signs.vulva-mean})/{@code signs.vulva-sd}). A sign looked for in vain has the
 * complement. The end of bleeding, discharge and being unwell date nothing (½).
 *
 * <h2>Smears and ultrasound</h2>
 *
 * <p>These speak of ω, u days before the observation. Before dioestrus, with S her own shift,
 * normal (0, {@code smear.shift-sd}), g = 1/(1 + exp(−(u − S − {@code smear.rise-centre})/{@code
 * smear.rise-scale})): cornified per cent has density (1 − s) N(·; low + (full − low) g, {@code
 * smear.reading-sd}) + s/100 with s = {@code smear.stray}, low and full {@code
 * smear.early-cornified} and {@code smear.full-cornified}; neutrophils have chances from row {@code
 * early} of their table at g = 0 to row {@code oestrus} at g = 1. In dioestrus: mean and spread
 * {@code smear.dioestrus-cornified} and {@code -sd}, row {@code dioestrus}. Dioestrus begins E
 * after ω, normal ({@code smear.dioestrus-lag}, {@code smear.dioestrus-sd}); a smear at u is past
 * it with probability Φ((u − E)/{@code smear.dioestrus-edge}). One S and one E for all smears of a
 * season. Ultrasound sees an ovulated ovary with probability e + (1 − 2e) Φ(u/{@code scan.sd}), e =
 * {@code scan.error}.
 *
 * <p>Without ovulation: LH positive with probability {@code lh.false-positive} + {@code
 * lh.burst}/2; a fold state 1/5; each sign ½; ultrasound ovulated e. Cells come and go with the
 * follicles whether they ovulate or not: smears tell when, and never whether. The probability that
 * she does not ovulate is what it is without them, so that without ovulation they count as their
 * mean over all that is known of ω otherwise.
 *
 * <h2>Computation</h2>
 *
 * <p>λ lies on multiples of a step from the anchor, a quarter day, or an eighth where LH was
 * tested; sums over the lattice are trapezoid rules, which for smooth densities that vanish at
 * their ends converge faster than any power of the step. The log likelihood of progesterone is
 * smooth in λ: it is computed every quarter day, and joined by cubics where LH was tested. ρ, A, S
 * and E are sums over 9 to 13 equally spaced points within ±2.8 to ±3.75 standard deviations; α, β
 * and scales are integrated in closed form by the Woodbury identity; one limit in closed form,
 * several by quadrature along their shared directions. Tops of a broken-off course lie a quarter of
 * its width apart. Two odd values are passed over where all numbers lie within 3 of the course in
 * squared standard deviations. A coarse pass finds where weight lies, with and without any one
 * progesterone result, courses with and without a rest apart, to one in ten million at either end;
 * the fine pass covers that. Where a plateau or an early fall has less than one in a hundred there,
 * a third of its points serves the fine pass. A number to come takes irregular and failing courses
 * of less than one in twenty as ordinary. Leaving one progesterone result out follows from the
 * inverse covariance at no second pass: exactly where all results are numbers; beside limits the
 * other numbers are taken as right while they are asked about. Of more than twenty numbers every
 * two are summed as both odd only where one is among the eight that look oddest alone, and two
 * others as if each were odd on its own; that moves no log likelihood, with any one result left
 * out, by more than 0.02 against that of a peak half a day off, and no share of oddness by more
 * than 0.01. So the cost grows with the square of their number at most. What is cut off moves no
 * median, no width and no influence by more than half an hour or one part in a hundred of the 90 %
 * interval; influences lie within an hour, or that part, of a second program's (those on the width
 * within four hours, or two parts).
 */
@NullMarked
package io.github.tiderule.engine.timeline;

import org.jspecify.annotations.NullMarked;
