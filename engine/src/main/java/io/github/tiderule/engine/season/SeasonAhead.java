package io.github.tiderule.engine.season;

import io.github.tiderule.engine.advice.course.BeforeSeason;
import io.github.tiderule.engine.advice.course.BeforeSeason.Check;
import io.github.tiderule.engine.advice.course.BeforeSeason.NextSeason;
import io.github.tiderule.rules.StageResult.Ruled;
import io.github.tiderule.rules.conclusion.care.CheckState;
import io.github.tiderule.rules.conclusion.care.SeasonCheck;
import io.github.tiderule.rules.fact.EarlierCycle;
import io.github.tiderule.rules.fact.EarlierKind;
import io.github.tiderule.rules.kennel.Background;
import io.github.tiderule.rules.kennel.BeforeSeasonAsked;
import io.github.tiderule.rules.kennel.LastWhelping;
import io.github.tiderule.rules.sentence.Sentence;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * The season to come, and what to see to before it.
 *
 * <pre>
 * expected = last first blood + median of her intervals
 * from     = last first blood + the lesser of her shortest interval and median − margin
 * to       = last first blood + the greater of her longest interval and median + margin
 * </pre>
 *
 * with a margin of six weeks for one interval and three weeks for more (working values). Without an
 * interval of hers, common practice stands in: 6 to 7 months, and from 4.5 to 12 as the window.
 */
public final class SeasonAhead {

  private SeasonAhead() {}

  /** What the rules are told of the time before a season. */
  public static List<Object> facts(Season season) {
    if (!asked(season)) {
      return List.of();
    }
    Background background = season.background();
    List<Object> facts = new ArrayList<>(background.tests());
    facts.add(new BeforeSeasonAsked());
    Stream.ofNullable(background.lastWhelpedOn()).map(LastWhelping::new).forEach(facts::add);
    Stream.ofNullable(background.stud()).forEach(facts::add);
    return facts;
  }

  /**
   * Whether a file tells of the time before a season and of no season: no day of first blood, and
   * nothing seen since.
   */
  public static boolean between(Season season) {
    return asked(season) && notBegun(season);
  }

  /** Whether a file tells of the time before a season: its tests, or her intervals alone. */
  private static boolean asked(Season season) {
    return season.background().asked() || (hasInterval(season) && notBegun(season));
  }

  private static boolean hasInterval(Season season) {
    return bloods(season).size() > 1;
  }

  private static boolean notBegun(Season season) {
    return season.firstBlood().on() == null && season.observations().isEmpty();
  }

  /** Ids of the rules that find a check due. */
  public static List<String> due(Care care) {
    return checks(care).stream()
        .filter(check -> check.state() == CheckState.DUE)
        .map(Check::rule)
        .distinct()
        .toList();
  }

  /**
   * The season to come, and the checks where the file asks for them.
   *
   * @param over whether nothing of the season on file is left to time
   * @return null where the file tells nothing of that time, and no interval to expect it from
   */
  public static @Nullable BeforeSeason of(Season season, Care care, boolean over) {
    if (!asked(season) && !(over && hasInterval(season))) {
      return null;
    }
    return new BeforeSeason(next(season), checks(care));
  }

  private static List<Check> checks(Care care) {
    return care.ruled(SeasonCheck.class)
        .sorted(
            Comparator.comparing((Ruled<SeasonCheck> ruled) -> ruled.conclusion().state())
                .thenComparing(ruled -> ruled.conclusion().whose())
                .thenComparing(ruled -> ruled.rule().id())
                .thenComparing(ruled -> ruled.conclusion().sentence()))
        .map(
            ruled ->
                new Check(
                    ruled.conclusion().whose(),
                    ruled.conclusion().state(),
                    ruled.conclusion().veterinaryAct(),
                    ruled.conclusion().words(),
                    ruled.rule().id(),
                    ruled.rule().sources()))
        .distinct()
        .toList();
  }

  private static @Nullable NextSeason next(Season season) {
    List<LocalDate> bloods = bloods(season);
    if (bloods.isEmpty()) {
      return null;
    }
    LocalDate last = bloods.get(bloods.size() - 1);
    LocalDate today = season.asOf().atZone(season.zone()).toLocalDate();
    List<Long> intervals = new ArrayList<>();
    for (int i = 1; i < bloods.size(); i++) {
      intervals.add(ChronoUnit.DAYS.between(bloods.get(i - 1), bloods.get(i)));
    }
    return intervals.isEmpty()
        ? usual(season.tools(), last, today)
        : own(season.tools(), last, today, intervals);
  }

  /** Days of first blood, each once, in order. */
  private static List<LocalDate> bloods(Season season) {
    return Stream.concat(
            season.earlierCycles().stream()
                .filter(one -> one.kind() != EarlierKind.BROKEN_OFF)
                .map(EarlierCycle::firstBloodOn),
            Stream.ofNullable(season.firstBlood().on()))
        .distinct()
        .sorted()
        .toList();
  }

  private static NextSeason usual(Tools tools, LocalDate last, LocalDate today) {
    double least = tools.value("seasons.usual-least");
    double most = tools.value("seasons.usual-most");
    double middle = (least + most) / 2;
    LocalDate from = plus(last, tools.value("seasons.wide-least"));
    LocalDate to = plus(last, tools.value("seasons.wide-most"));
    return new NextSeason(
        plus(last, middle),
        from,
        to,
        0,
        middle,
        and(
            Sentence.of(
                "No interval of hers is on file. 6 to 7 months are usual (common practice), and"
                    + " bitches differ by months."),
            today,
            to));
  }

  private static NextSeason own(
      Tools tools, LocalDate last, LocalDate today, List<Long> intervals) {
    List<Long> sorted = intervals.stream().sorted().toList();
    int n = sorted.size();
    double median = (sorted.get((n - 1) / 2) + sorted.get(n / 2)) / 2.0;
    double margin = tools.value(n == 1 ? "seasons.margin-one" : "seasons.margin");
    LocalDate from = plus(last, Math.min(sorted.get(0), median - margin));
    LocalDate to = plus(last, Math.max(sorted.get(n - 1), median + margin));
    Sentence text =
        n == 1
            ? Sentence.of(
                "From her one interval of {} days, with {:tenths} days either side.",
                sorted.get(0),
                margin)
            : Sentence.of(
                "From the median of her {} intervals, {:tenths} days ({} to {}).",
                n,
                median,
                sorted.get(0),
                sorted.get(n - 1));
    return new NextSeason(plus(last, median), from, to, n, median, and(text, today, to));
  }

  /** What was reckoned from, and whether that is past. */
  private static Sentence and(Sentence text, LocalDate today, LocalDate to) {
    return today.isAfter(to)
        ? Sentence.of(
            "{} That is past: a season may have gone unseen, so let a smear or progesterone say"
                + " where she is.",
            text)
        : text;
  }

  private static LocalDate plus(LocalDate day, double days) {
    return day.plusDays(Math.round(days));
  }
}
