package io.github.tiderule.cases.published;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.greaterThanOrEqualTo;
import static org.hamcrest.Matchers.lessThan;
import static org.hamcrest.Matchers.lessThanOrEqualTo;

import io.github.tiderule.engine.days.EggKind;
import io.github.tiderule.engine.days.EggModel;
import io.github.tiderule.engine.days.Meeting;
import io.github.tiderule.rules.fact.semen.Route;
import io.github.tiderule.rules.fact.semen.Semen;
import io.github.tiderule.rules.parameter.Parameters;
import java.util.Locale;
import java.util.function.Predicate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The egg model against published figures; each test names its source and how it was read. Where
 * the model disagrees, the test holds the size of the disagreement and prints it.
 */
class EggFiguresTest {

  private static final EggModel MODEL = new EggModel(Parameters.load());
  private static final Meeting FRESH_UTERUS = MODEL.meeting(Semen.FRESH, Route.TRANSCERVICAL, 0);
  private static final Meeting FRESH_VAGINA = MODEL.meeting(Semen.FRESH, Route.VAGINAL, 0);
  private static final Meeting NATURAL = MODEL.meeting(Semen.NATURAL, Route.NATURAL, 0);
  private static final Meeting CHILLED = MODEL.meeting(Semen.CHILLED, Route.TRANSCERVICAL, 24);
  private static final Meeting FROZEN = MODEL.meeting(Semen.FROZEN, Route.TRANSCERVICAL, 0);

  /**
   * Eggs of a beagle's season; litters of her size class average 5.2 (hollinshead-2017, abstract).
   */
  private static final int EGGS = 6;

  private static void print(String words, Object... figures) {
    System.out.printf(Locale.ROOT, "egg model: " + words + "%n", figures);
  }

  /** Share of the eggs of some kinds that are met by doses on some days. */
  private static double share(Meeting meeting, Predicate<EggKind> of, double... days) {
    double met = 0;
    double all = 0;
    for (int egg = 0; egg < meeting.kinds().size(); egg++) {
      EggKind kind = meeting.kinds().get(egg);
      if (of.test(kind)) {
        double missed = 1;
        for (double day : days) {
          missed *= 1 - meeting.met(egg, day);
        }
        met += kind.weight() * (1 - missed);
        all += kind.weight();
      }
    }
    return met / all;
  }

  private static boolean late(EggKind kind) {
    return kind.school() == EggKind.School.LATE;
  }

  private static boolean early(EggKind kind) {
    return kind.school() == EggKind.School.EARLY;
  }

  /**
   * tsutsui-2009 (abstract; tiny groups, printed numbers inconsistent): inseminated into the uterus
   * 6, 7, 8 and 9 days after ovulation, 100, 71, 37.5 and 0 % conceived. The model's conception is
   * that at least one of six eggs is met. It falls as published, within what five females can say.
   */
  @ParameterizedTest
  @CsvSource({"6, 1.00", "7, 0.71", "8, 0.375", "9, 0.00"})
  void conceptionDeclinesLateAsPublished(double day, double published) {
    double model = 1 - Math.pow(1 - FRESH_UTERUS.share(day), EGGS);
    print("conception at OV+%.0f: published %.3f, model %.3f", day, published, model);
    double ofFive = Math.sqrt(model * (1 - model) / 5);
    assertThat(model, closeTo(published, 2 * ofFive));
    assertThat(model, lessThan(1 - Math.pow(1 - FRESH_UTERUS.share(day - 1), EGGS)));
  }

  /**
   * steckler-2013 (abstract): days 5, 6 and 7 after progesterone first reached 6 to 9 nmol/L took
   * 0.11, 0.56 and 0.27 of the eggs not yet fertilised; best pair day 6 and 7. By when that level
   * is reached, day 6 is 3.5 to 4 days after ovulation. The model has the best single day and the
   * best pair; it takes more on each day, since a share of eggs met leaves out all other reasons
   * why an egg is not fertilised, and its day 5 lies much nearer to day 6 than in the trial.
   */
  @Test
  void thawedDosesTakeEggsInTheOrderOfTheTrial() {
    double[] published = {0.11, 0.56, 0.27};
    double[] days = {2.75, 3.75, 4.75};
    for (int i = 0; i < 3; i++) {
      double alone = share(FROZEN, kind -> true, days[i]);
      print(
          "frozen, day %d: published %.2f of the eggs left, model %.2f",
          i + 5, published[i], alone);
    }
    assertThat(
        share(FROZEN, kind -> true, days[1]),
        allOf(
            greaterThan(share(FROZEN, kind -> true, days[0])),
            greaterThan(share(FROZEN, kind -> true, days[2]))));
    assertThat(
        share(FROZEN, kind -> true, days[1], days[2]),
        greaterThan(share(FROZEN, kind -> true, 1.75, 2.75)));
  }

  /**
   * Common practice against steckler-2013 (abstract): OV+2 and +3, or one dose 60 to 72 h after
   * ovulation, serve the early school; the late school's best single day is later, by less than the
   * day that lies between the two as they are told. The plan of the mixture lies between.
   */
  @Test
  void bothSchoolsStandAsAMixture() {
    assertThat(share(FROZEN, EggFiguresTest::early, 2, 3), greaterThan(0.95));
    assertThat(share(FROZEN, EggFiguresTest::early, 2.75), greaterThan(0.85));
    double apart = best(EggFiguresTest::late) - best(EggFiguresTest::early);
    print(
        "best single frozen dose: early school OV+%.2f, late OV+%.2f, both OV+%.2f",
        best(EggFiguresTest::early), best(EggFiguresTest::late), best(kind -> true));
    assertThat(apart, allOf(greaterThan(0.0), lessThanOrEqualTo(1.0)));
    assertThat(
        best(kind -> true),
        allOf(
            greaterThanOrEqualTo(best(EggFiguresTest::early)),
            lessThanOrEqualTo(best(EggFiguresTest::late))));
    assertThat(
        share(FROZEN, EggFiguresTest::late, 2, 3),
        lessThan(share(FROZEN, EggFiguresTest::late, 3, 4)));
  }

  /**
   * Common practice gives one frozen dose 60 to 72 hours after ovulation, steckler-2013 (abstract)
   * about 3.5 to 4 days after it. Where ovulation is known to about half a day, as after good
   * testing, the model's best day lies in that span, and what half a day earlier loses is small.
   */
  @Test
  void oneFrozenDoseLiesBetweenPracticeAndTheTrial() {
    double best = 0;
    for (double day = 2; day <= 5; day += 0.125) {
      best = doubtful(day) > doubtful(best) ? day : best;
    }
    print(
        "one frozen dose, ovulation known to half a day: best OV+%.2f with %.3f, half a day before %.3f",
        best, doubtful(best), doubtful(best - 0.5));
    assertThat(best, allOf(greaterThan(2.4), lessThanOrEqualTo(4.0)));
    assertThat(doubtful(best) - doubtful(best - 0.5), lessThan(0.1));
  }

  /** Share that a frozen dose meets, with half a day of doubt about ovulation. */
  private static double doubtful(double day) {
    double sum = 0;
    double all = 0;
    for (double z = -2.5; z <= 2.5; z += 0.25) {
      double weight = Math.exp(-z * z / 2);
      sum += weight * FROZEN.share(day + 0.5 * z);
      all += weight;
    }
    return sum / all;
  }

  private static double best(Predicate<EggKind> of) {
    double best = 0;
    for (double day = 0; day <= 8; day += 0.125) {
      if (share(FROZEN, of, day) > share(FROZEN, of, best)) {
        best = day;
      }
    }
    return best;
  }

  /** Days for which a single dose meets at least so much of her eggs. */
  private static double width(Meeting meeting, double least) {
    double width = 0;
    for (double day = -12; day <= 14; day += 0.05) {
      width += meeting.share(day) >= least ? 0.05 : 0;
    }
    return width;
  }

  /** Common practice: fresh semen forgives most, frozen least; the order, at two levels. */
  @ParameterizedTest
  @CsvSource({"0.5", "0.7"})
  void freshIsWideChilledNarrowerFrozenNarrowest(double least) {
    Meeting old = MODEL.meeting(Semen.CHILLED, Route.TRANSCERVICAL, 48);
    print(
        "days that meet %.1f of her eggs: natural %.1f, chilled a day old %.1f, two days old %.1f,"
            + " frozen %.1f",
        least,
        width(NATURAL, least),
        width(CHILLED, least),
        width(old, least),
        width(FROZEN, least));
    assertThat(width(CHILLED, least), lessThan(width(NATURAL, least)));
    assertThat(width(old, least), lessThan(width(CHILLED, least)));
    assertThat(width(FROZEN, least), lessThan(width(old, least)));
  }

  /**
   * concannon-2000 (second-hand copy): natural matings are best from the LH peak to five or six
   * days after it, OV−2 to OV+4; single matings were fertile from LH−3 to LH+10 at the extremes.
   * The model has the first; of the extremes it has the early one, and disagrees openly with the
   * late one, since there it follows tsutsui-2009 (abstract): the cervix closes about OV+5.
   */
  @Test
  void naturalMatingsAreBestFromThePeakOn() {
    for (double day = -2; day <= 4; day += 0.25) {
      assertThat("OV" + day, NATURAL.share(day), greaterThan(0.6));
    }
    assertThat(NATURAL.share(-5), greaterThan(0.1));
    print(
        "natural mating at LH+10 (fertile once at the extreme): model meets %.4f of her eggs",
        NATURAL.share(8));
    assertThat(NATURAL.share(8), lessThan(0.001));
  }

  /**
   * vanhaaften-1989 (abstract): one mating 84 %, several 88 % pregnant, timed by progesterone. Both
   * are limited by much that is not timing, so only the direction is asked for: several matings
   * meet more eggs, but not many more. Dates scatter about the best by a day (working value).
   */
  @Test
  void severalMatingsMeetSomewhatMore() {
    double one = 0;
    double two = 0;
    double sum = 0;
    for (double off = -3; off <= 3; off += 0.25) {
      double weight = Math.exp(-off * off / 2);
      one += weight * share(NATURAL, kind -> true, 1.5 + off);
      two += weight * share(NATURAL, kind -> true, 1.5 + off, 3.5 + off);
      sum += weight;
    }
    print(
        "one mating meets %.3f of her eggs, two 48 h apart %.3f (published: 0.84 and 0.88 pregnant)",
        one / sum, two / sum);
    assertThat((two - one) / sum, allOf(greaterThan(0.0), lessThan(0.10)));
  }

  /**
   * tsutsui-2009 (abstract): the cervix closes about five days after ovulation, and semen in the
   * vagina no longer arrives; into the uterus some still conceive.
   */
  @Test
  void vaginalRouteClosesAndTheUterusStaysOpen() {
    assertThat(MODEL.probabilityClosed(5), closeTo(0.5, 0.05));
    assertThat(FRESH_VAGINA.share(5) / FRESH_UTERUS.share(5), closeTo(0.5, 0.05));
    assertThat(FRESH_VAGINA.share(6.5), lessThan(0.01));
    assertThat(FRESH_UTERUS.share(6.5), greaterThan(0.1));
    assertThat(FRESH_VAGINA.share(2), closeTo(FRESH_UTERUS.share(2), 0.001));
  }

  /**
   * reynaud-2005 (abstract): no egg is mature at 44 h after ovulation, the first at 54 h;
   * songsasen- 2007 (opening): all by 48 to 72 h. In the model hardly any is ripe at 44 h and most
   * at 72 h; it is later than songsasen-2007 by the spread of her eggs' own ovulations.
   */
  @Test
  void eggsRipenBetweenTwoAndThreeAndAHalfDays() {
    double at44 = ripe(44 / 24.0);
    double at72 = ripe(3);
    print("ripe eggs: %.3f at 44 h, %.3f at 72 h", at44, at72);
    assertThat(at44, lessThan(0.06));
    assertThat(at72, greaterThan(0.75));
    assertThat(ripe(3.6), greaterThan(0.97));
  }

  private static double ripe(double day) {
    double ripe = 0;
    for (EggKind kind : NATURAL.kinds()) {
      double z = (day - kind.ripe()) / kind.ripeSd();
      ripe +=
          kind.weight()
              * org.apache.commons.statistics.distribution.NormalDistribution.of(0, 1)
                  .cumulativeProbability(z);
    }
    return ripe;
  }

  /**
   * Chilled semen loses about a day of life with each further day in the box (common practice): it
   * must be given later, and more of it is dead on arrival.
   */
  @Test
  void olderChilledSemenMustBeGivenLaterAndMeetsLess() {
    double dayOld = earliest(24);
    assertThat(earliest(48) - dayOld, allOf(greaterThan(0.4), lessThan(1.3)));
    assertThat(earliest(72), greaterThan(earliest(48)));
    assertThat(earliest(12), equalTo(dayOld));
    print(
        "most that one chilled dose meets: %.2f at 24 h, %.2f at 48 h, %.2f at 72 h",
        most(24), most(48), most(72));
    assertThat(most(24), greaterThan(0.99));
    assertThat(most(48), allOf(greaterThan(0.9), lessThan(most(24))));
    assertThat(most(72), lessThan(0.8 * most(48)));
  }

  private static double most(double ageHours) {
    Meeting meeting = MODEL.meeting(Semen.CHILLED, Route.TRANSCERVICAL, ageHours);
    double most = 0;
    for (double day = -6; day <= 8; day += 0.05) {
      most = Math.max(most, meeting.share(day));
    }
    return most;
  }

  /** First day on which a dose meets seven tenths of the most it can. */
  private static double earliest(double ageHours) {
    Meeting meeting = MODEL.meeting(Semen.CHILLED, Route.TRANSCERVICAL, ageHours);
    double least = 0.7 * most(ageHours);
    for (double day = -6; day <= 8; day += 0.05) {
      if (meeting.share(day) >= least) {
        return day;
      }
    }
    throw new IllegalStateException("no such day");
  }
}
