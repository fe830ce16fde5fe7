/**
 * Eggs and plans: which share of her eggs a dose meets, and which set of doses meets most.
 *
 * <p><b>What this stage may know:</b> the density of ovulation, the semen and what limits its use,
 * breedings already done, and the parameters of scopes {@code eggs} and {@code planning}. It knows
 * no rule; a day that a rule vetoes reaches it as a forbidden day.
 *
 * <h2>The egg model</h2>
 *
 * <p>Parameters are named without their scope {@code eggs}; each row of the file says where its
 * value comes from and how it was read; {@code cases/evidence} fits them together to what was
 * published, and says which of them the results speak to. Time t is in days from the middle of her
 * ovulation to the dose; it is meant for −12 ≤ t ≤ 14, and outside nothing is met. Φ is the
 * standard normal distribution function; a life that is log-normal with median m and log spread s
 * outlasts x &gt; 0 with probability 1 − Φ(ln(x/m)/s), and x ≤ 0 surely.
 *
 * <p><b>The egg.</b> It is ripe at R, normal with mean {@code ripening-mean} and variance {@code
 * spread-sd}² + {@code ripening-sd}²: her follicles rupture over 12 to 36 hours (spattini-2003),
 * and an egg is shed unripe and ripens within 48 to 72 hours (reynaud-2005, songsasen-2007). From R
 * on it lives for L. Sources disagree on L, so both views are kept: log-normal ({@code life-short},
 * {@code life-short-log-sd}), two days (karre-2012), and log-normal ({@code life-long}, {@code
 * life-long-log-sd}), 48 to 60 hours or more and some four to five days (tsutsui-2009), the latter
 * with weight {@code life-long-weight}, since bitches have conceived on days that the former does
 * not reach. R and L are independent.
 *
 * <p><b>The sperm.</b> A dose can fertilise from {@code sperm-ready} after it was given, and lives
 * for S, log-normal with the median of its semen: {@code life.natural}, {@code life.fresh}, {@code
 * life.chilled}, {@code life.frozen}, and the log spread beside it. Chilled semen that was h hours
 * in the box has spent A = {@code life.chilled-loss}·max(0, h/24 − 1) of that life already; for
 * other semen A = 0. (doak-1967 for natural and fresh; the others are expert opinion, and nothing
 * was measured.)
 *
 * <p><b>The way.</b> Semen left in the vagina arrives with probability 1 − Φ((t − {@code
 * closed-after})/{@code closed-sd}), since the cervix closes about five days after ovulation
 * (tsutsui-2009); semen put into the uterus always arrives. How many sperm arrive is not in the
 * model: rules weigh the dose, the motility and the route.
 *
 * <p><b>The two schools on thawed semen.</b> Practice inseminates two to three days after
 * ovulation, and 77 to 79 in 100 seasons so dosed whelped (thomassen-2006); steckler-2013 told
 * sires apart by day, and found most eggs taken about a day later. The early school has the egg
 * ready for thawed sperm at R. The late school, of weight {@code frozen-late-weight}, has it ready
 * only W = {@code frozen-late-wait} after R; the egg dies no later for it. Both are fitted: the
 * results say how long eggs wait on average, and hardly how that is split between weight and wait.
 * For other semen, which waits for days, W = 0 and there is one school.
 *
 * <p><b>The meeting.</b> A dose meets an egg when both are alive at the later of the two moments
 * from which they can: with u = t + {@code sperm-ready},
 *
 * <pre>met(t) = arrives(t) · E[ P(S &gt; A + max(0, R + W − t)) · P(L &gt; max(u − R, W)) ]</pre>
 *
 * <p>over R, L and school. Doses die independently of each other, so a set of doses misses an egg
 * with the product of their misses <i>given the egg</i>; its share is 1 less the mean of that
 * product over eggs and over ovulation. That is why eggs are kept by {@linkplain
 * io.github.tiderule.engine.days.EggKind kinds}: a second dose is worth most on the kinds the first
 * is likely to miss, among them those of the other school.
 *
 * <p><b>How it is computed.</b> A normal spread σ is cut into kinds at σ·x with weights w ∝ exp(−x²
 * / 1.5), each kind keeping a spread of σ/2, so that the sum has variance σ² again: five for R (x =
 * −1.6, −0.8, …, 1.6), three for ln L of the longer view (x = −1.2, 0, 1.2), one for the shorter.
 * Within a kind R is integrated by a five-point Gauss–Hermite rule, L in closed form. Tabulated
 * every eighth of a day with straight lines between; within 0.01 of the integral for one dose, and
 * within 0.025 for two, whose misses are multiplied kind by kind and not egg by egg.
 *
 * <p><b>Practice.</b> Sets of doses whose shares lie within {@code planning.practice-margin} of the
 * best are told apart by what the trade does before anything else: frozen and chilled doses not far
 * apart, natural and fresh ones on every second day, a frozen dose on its own 2.4 to 3.7 days after
 * the median ovulation.
 *
 * <p><b>What it is not.</b> A share of eggs met is no share of pups: it knows nothing of how good
 * an old egg is (a third of late conceptions were resorbed, tsutsui-2009), of the stud, or of her
 * age. It is there to rank days.
 */
@NullMarked
package io.github.tiderule.engine.days;

import org.jspecify.annotations.NullMarked;
