package io.github.tiderule.cases.odd;

import io.github.tiderule.cases.cohort.Calendar;
import io.github.tiderule.cases.plans.Row;
import io.github.tiderule.engine.Tiderule;
import io.github.tiderule.engine.advice.Action;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.Plan;
import io.github.tiderule.engine.advice.course.Ovulation;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;

/**
 * What is wrong with one answer, by the truth.
 *
 * @param over told that the season is over while a dose to come meets half her eggs, or before the
 *     true season has begun, with no doubt told
 * @param dated whether an interval for ovulation is told without a doubt
 * @param outside such an interval more than a day beside the truth; where she does not ovulate, one
 *     that says she probably has, since before that nobody can know
 * @param firmOutside the same of an interval of at most {@value #FIRM} days
 * @param confident the same where the answer does not say that all rests on one value either; and
 *     where she does not ovulate, only once her level has risen no more for {@value #KNOWABLE}
 *     days, since until then it is the level of any season
 * @param falseProof ovulation called proven though it comes more than a day later or never
 * @param slipUnnoticed a slip moved the plan by more than a day and nothing about it is asked or
 *     told
 * @param harmfulSlip the same where it makes the answer act, or keeps it from acting: to breed, to
 *     book, or to give the season up, and the answer does not rest by its own words on the slip
 * @param doseInVain the dose would be spent before the engine is asked again, on less than a tenth
 *     of her eggs; where she does not ovulate, only once her level has risen no more for {@value
 *     #KNOWABLE} days, since until then to order is right by all that can be known
 * @param inVainAtFirst the same without that limit
 * @param doubt whether something is told to be odd, asked, held or for a vet
 */
record Verdict(
    boolean over,
    boolean overAtOnce,
    boolean dated,
    boolean outside,
    boolean firmOutside,
    boolean confident,
    boolean falseProof,
    boolean slipUnnoticed,
    boolean harmfulSlip,
    boolean doseInVain,
    boolean inVainAtFirst,
    boolean doubt) {

  static final double FIRM = 4;
  static final double KNOWABLE = 2;
  private static final double HALF = 0.5;
  private static final double LITTLE = 0.1;
  private static final double LIKELY_NONE = 0.2;
  private static final double DAY = 1;
  private static final double LAST_CALL = 18 / 24.0;
  private static final double NEXT_MORNING = 1 + 8 / 24.0;
  private static final Set<Action.Now> ACTS =
      Set.of(Action.Now.BREED, Action.Now.BOOK, Action.Now.PASSED);
  private static final double ORDERED_AND_SENT = 40 / 24.0;
  private static final Verdict REFUSED =
      new Verdict(
          false, false, false, false, false, false, false, false, false, false, false, true);

  /** Puts every evening of a season to the engine. A dose that is spent is spent once. */
  static List<Verdict> of(Tiderule engine, Eggs eggs, OddSeason season) {
    List<Verdict> verdicts = new ArrayList<>();
    boolean spent = false;
    for (Asked asked : season.asked()) {
      if (asked.told() == null) {
        verdicts.add(REFUSED);
        continue;
      }
      Advice advice = engine.advise(asked.told());
      @Nullable Advice without =
          asked.withoutSlip() == null ? null : engine.advise(asked.withoutSlip());
      Judge judge = new Judge(eggs, season, asked, advice);
      verdicts.add(judge.verdict(without, spent));
      spent = spent || judge.spends();
    }
    return verdicts;
  }

  /** Whether anything is wrong that costs a season. */
  boolean wrong() {
    return over || confident || falseProof || harmfulSlip || doseInVain;
  }

  /** The same by what was counted before. */
  boolean wrongAtFirst() {
    return overAtOnce || firmOutside || falseProof || slipUnnoticed || inVainAtFirst;
  }

  private record Judge(Eggs eggs, OddSeason season, Asked asked, Advice advice) {

    Verdict verdict(@Nullable Advice withoutSlip, boolean spent) {
      Doubts doubts = Doubts.of(advice);
      boolean doubt = doubts.any();
      Ovulation ovulation = advice.timing().ovulation();
      boolean dated = ovulation != null && !doubt;
      boolean outside = ovulation != null && !doubt && outside(ovulation);
      boolean firmOutside =
          ovulation != null
              && !doubts.anyAtFirst()
              && outside(ovulation)
              && width(ovulation) <= FIRM;
      boolean moved = withoutSlip != null && moved(withoutSlip);
      boolean over = passed(advice) && !doubts.anyAtFirst();
      boolean vain = !spent && spends() && meets() < LITTLE;
      return new Verdict(
          over && !doubt && left(Math.floor(asked.day()) + NEXT_MORNING) >= HALF,
          over && left(asked.day()) >= HALF,
          dated,
          outside,
          firmOutside,
          firmOutside && !doubt && !doubts.reserved() && knowable(),
          ovulation != null && ovulation.confirmed() && truth() > asked.day() + DAY,
          moved && !noticed(doubts, doubts::aboutAtFirst),
          withoutSlip != null
              && moved
              && !noticed(doubts, doubts::about)
              && harmful(withoutSlip, doubts),
          vain && knowable(),
          vain,
          doubt);
    }

    /** The ovulation of the season she is in; none while that one breaks off. */
    private double truth() {
      Truth truth = season.truth();
      return asked.day() < truth.trueBlood() ? Double.POSITIVE_INFINITY : truth.ovulation();
    }

    private double day(OffsetDateTime at) {
      return Calendar.day(at.toInstant()) - season.begins();
    }

    /** Whether anybody can know that she does not ovulate, where she does not. */
    private boolean knowable() {
      return Double.isFinite(truth()) || season.truth().risesNoMore(asked.day(), KNOWABLE);
    }

    /**
     * What a dose still to come can meet, once it can be there.
     *
     * @param soonest when semen that is at hand is given at the soonest
     */
    private double left(double soonest) {
      double from = season.row() == Row.CHILLED_ONE ? asked.day() + ORDERED_AND_SENT : soonest;
      return eggs.best(season.row(), from - season.truth().ovulation());
    }

    private static boolean passed(Advice advice) {
      return advice.action().now() == Action.Now.PASSED;
    }

    private double width(@Nullable Ovulation ovulation) {
      return ovulation == null
          ? Double.POSITIVE_INFINITY
          : day(ovulation.p95()) - day(ovulation.p05());
    }

    private boolean outside(Ovulation ovulation) {
      double truth = truth();
      if (Double.isInfinite(truth)) {
        return ovulation.noOvulationProbability() < LIKELY_NONE
            && day(ovulation.median()) < asked.day();
      }
      return truth < day(ovulation.p05()) - DAY || truth > day(ovulation.p95()) + DAY;
    }

    private boolean harmful(Advice without, Doubts doubts) {
      boolean acts = ACTS.contains(advice.action().now()) || ACTS.contains(without.action().now());
      return acts && asked.slipped().stream().noneMatch(doubts::restsOn);
    }

    private boolean moved(Advice without) {
      Plan plan = advice.breeding().plan();
      Plan other = without.breeding().plan();
      if (passed(advice) != passed(without) || (plan == null) != (other == null)) {
        return true;
      }
      return plan != null
          && other != null
          && Math.abs(day(plan.at().get(0)) - day(other.at().get(0))) > DAY;
    }

    private boolean noticed(Doubts doubts, Predicate<String> about) {
      return season.truth().kind().slippedBlood()
          ? doubts.aboutFirstBlood()
          : asked.slipped().stream().anyMatch(about);
    }

    /** Whether her only dose is given, booked or ordered before the engine is asked again. */
    boolean spends() {
      Plan plan = advice.breeding().plan();
      if (plan == null || season.row() == Row.NATURAL || asked.bred()) {
        return false;
      }
      Action.Now now = advice.action().now();
      return now == Action.Now.BREED
          || (now == Action.Now.BOOK && lastMoment(plan) <= asked.next());
    }

    /** Share of her eggs that the first time of the plan meets. */
    private double meets() {
      Plan plan = advice.breeding().plan();
      return plan == null ? 0 : eggs.share(season.row(), day(plan.at().get(0)) - truth());
    }

    private double lastMoment(Plan plan) {
      double first = day(plan.at().get(0));
      OffsetDateTime orderBy = plan.orderBy();
      return season.row() == Row.FROZEN_ONE
          ? Math.floor(first) - 1 + LAST_CALL
          : orderBy == null ? first - 1 : day(orderBy);
    }
  }
}
