package io.github.tiderule.engine.pregnancy;

import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.course.Caesarean;
import io.github.tiderule.engine.advice.course.Happened;
import io.github.tiderule.engine.advice.course.LookBack;
import io.github.tiderule.engine.advice.course.Milestone;
import io.github.tiderule.engine.advice.course.Pregnancy;
import io.github.tiderule.engine.advice.course.RedFlag;
import io.github.tiderule.engine.advice.course.Whelping;
import io.github.tiderule.engine.season.Care;
import io.github.tiderule.engine.season.Dated;
import io.github.tiderule.engine.season.Read;
import io.github.tiderule.engine.season.Season;
import io.github.tiderule.engine.season.Tools;
import io.github.tiderule.engine.timeline.Density;
import io.github.tiderule.engine.timeline.Turning;
import io.github.tiderule.engine.whelping.Gestation;
import io.github.tiderule.engine.whelping.WhelpingEvidence;
import io.github.tiderule.rules.StageResult;
import io.github.tiderule.rules.conclusion.FindingKind;
import io.github.tiderule.rules.conclusion.care.CaesareanView;
import io.github.tiderule.rules.fact.CaesareanDay;
import io.github.tiderule.rules.sentence.Sentence;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** The pregnancy of a dated season: whelping, what is due, days for a caesarean, and after. */
public final class PregnancyCourse {

  /** Offsets within a milestone's window over which ovulation is moved. */
  private static final int OFFSETS = 16;

  private final Dated dated;
  private final Read read;
  private final Season season;
  private final Tools tools;
  private final WhelpingEvidence evidence;
  private final Gestation.Estimate forecast;

  private PregnancyCourse(Dated dated, WhelpingEvidence evidence) {
    this.dated = dated;
    this.evidence = evidence;
    read = dated.read();
    season = dated.season();
    tools = season.tools();
    forecast = tools.gestation().estimate(evidence);
  }

  /** The course of a dated season. */
  public static PregnancyCourse of(Dated dated) {
    @Nullable Turning turning =
        dated.read().has(FindingKind.DIOESTROUS_SHIFT)
            ? dated.season().tools().timeline().turning(dated.evidence(), dated.estimate())
            : null;
    return new PregnancyCourse(dated, PregnancySigns.of(dated, turning));
  }

  /** Whether she is bred and ovulation has passed, or more is known of what came of it. */
  public boolean pastBreeding() {
    return dated.past()
        && read.has(FindingKind.ALREADY_BRED, FindingKind.WHELPED, FindingKind.NOT_PREGNANT);
  }

  /** Whether a pregnancy may be going on. */
  private boolean pregnant() {
    return read.has(FindingKind.ALREADY_BRED)
        && !read.has(FindingKind.WHELPED, FindingKind.NOT_PREGNANT);
  }

  /** The forecast; null once it is known that there is nothing to forecast. */
  public @Nullable Whelping whelping() {
    return read.has(FindingKind.WHELPED, FindingKind.NOT_PREGNANT)
        ? null
        : dated.whelping(forecast);
  }

  /** The days weighed for a caesarean; none before term is near. */
  public List<CaesareanDay> caesareanDays() {
    Density ovulation = dated.density();
    double passed = season.axis().day(season.asOf()) - ovulation.quantile(0.5);
    if (!pregnant() || passed < tools.value("whelping.caesarean.from")) {
      return List.of();
    }
    LocalDate ovulated = ovulated();
    LocalDate today = season.asOf().atZone(season.zone()).toLocalDate();
    List<CaesareanDay> days = new ArrayList<>();
    int last = (int) Math.round(tools.value("whelping.caesarean.last-shown"));
    for (int after = (int) Math.round(tools.value("whelping.caesarean.first-shown"));
        after <= last;
        after++) {
      LocalDate day = ovulated.plusDays(after);
      if (day.isBefore(today)) {
        continue;
      }
      double noon = season.axis().day(noon(day));
      double early = 1 - ovulation.cdf(noon - tools.value("whelping.early-before"));
      days.add(new CaesareanDay(day, after, early, forecast.whelping().cdf(noon)));
    }
    return days;
  }

  private LocalDate ovulated() {
    return dated.quantile(0.5).atZone(season.zone()).toLocalDate();
  }

  private Instant noon(LocalDate day) {
    return day.atTime(LocalTime.NOON).atZone(season.zone()).toInstant();
  }

  /**
   * What is due, what to look out for and what is past; null where there is nothing of it.
   *
   * @param counted whether days may be counted from ovulation, and else red flags alone are told
   */
  @Nullable Pregnancy pregnancy(Care care, boolean counted) {
    List<Milestone> milestones =
        (counted
                ? care.ruled(io.github.tiderule.rules.conclusion.care.Milestone.class)
                : Stream
                    .<StageResult.Ruled<io.github.tiderule.rules.conclusion.care.Milestone>>empty())
            .sorted(Comparator.comparing(ruled -> ruled.conclusion().kind()))
            .map(this::milestone)
            .toList();
    List<Happened> happened =
        counted && pastBreeding()
            ? PregnancyPast.of(read.accepted(), season.outcome(), season.clock(), ovulated())
            : List.of();
    List<RedFlag> flags =
        care.ruled(io.github.tiderule.rules.conclusion.care.RedFlag.class)
            .sorted(
                Comparator.comparing(
                        (StageResult.Ruled<io.github.tiderule.rules.conclusion.care.RedFlag>
                                ruled) -> ruled.conclusion().kind())
                    .thenComparing(ruled -> ruled.rule().id()))
            .map(
                ruled ->
                    new RedFlag(
                        ruled.conclusion().kind(),
                        ruled.conclusion().words(),
                        ruled.rule().id(),
                        ruled.rule().sources()))
            .toList();
    return milestones.isEmpty() && flags.isEmpty() && happened.isEmpty()
        ? null
        : new Pregnancy(milestones, flags, happened);
  }

  private Milestone milestone(
      StageResult.Ruled<io.github.tiderule.rules.conclusion.care.Milestone> ruled) {
    double from = ruled.conclusion().fromDays();
    double to = ruled.conclusion().toDays();
    return new Milestone(
        ruled.conclusion().kind(),
        season.clock().offset(season.axis().instant(due(from, to, 0.05))),
        season.clock().offset(season.axis().instant(due(from, to, 0.95))),
        ruled.conclusion().words(),
        ruled.rule().id(),
        ruled.rule().sources());
  }

  /** A quantile of ovulation moved by an even window of days. */
  private double due(double from, double to, double share) {
    Density ovulation = dated.density();
    double low = ovulation.quantile(0.001) + from;
    double high = ovulation.quantile(0.999) + to;
    for (int i = 0; i < 40; i++) {
      double middle = (low + high) / 2;
      double below = 0;
      for (int k = 0; k < OFFSETS; k++) {
        below += ovulation.cdf(middle - from - (to - from) * (k + 0.5) / OFFSETS) / OFFSETS;
      }
      if (below <= share) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return (low + high) / 2;
  }

  /** Days for a caesarean with what the rules say of them; null before term is near. */
  @Nullable Caesarean caesarean(Care care) {
    List<CaesareanDay> days = caesareanDays();
    if (days.isEmpty()) {
      return null;
    }
    List<Caesarean.Day> told = days.stream().flatMap(day -> told(care, day).stream()).toList();
    return new Caesarean(
        told,
        tools
            .say()
            .that(
                "Counted from ovulation, never from a mating or for convenience. A vet decides,"
                    + " from her progesterone, the pups on ultrasound and her own signs; from day"
                    + " {care.caesarean.first} on have help ready day and night, since she may"
                    + " begin first"));
  }

  private static List<Caesarean.Day> told(Care care, CaesareanDay day) {
    return care.ruled(CaesareanView.class)
        .filter(ruled -> ruled.conclusion().day().equals(day.day()))
        .limit(1)
        .map(
            ruled ->
                new Caesarean.Day(
                    day.day(),
                    day.daysAfterOvulation(),
                    day.chanceEarly(),
                    day.chanceBegun(),
                    ruled.conclusion().verdict(),
                    ruled.conclusion().words(),
                    ruled.rule().id(),
                    ruled.rule().sources()))
        .toList();
  }

  /**
   * The whelping beside its forecast; null until she has whelped, or where none was made.
   *
   * @param then the advice as it was at a moment
   */
  @Nullable LookBack lookBack(Function<Instant, Advice> then) {
    @Nullable LocalDate whelpedOn = season.outcome().whelpedOn();
    if (whelpedOn == null) {
      return null;
    }
    Instant whelped = noon(whelpedOn);
    long before = Math.round(tools.value("whelping.look-back.days"));
    @Nullable Whelping foretold =
        then.apply(whelped.minus(before, ChronoUnit.DAYS)).course().whelping();
    if (foretold == null) {
      return null;
    }
    double error = ChronoUnit.MINUTES.between(foretold.median().toInstant(), whelped) / (24.0 * 60);
    boolean within =
        !whelpedOn.isBefore(foretold.p05().toLocalDate())
            && !whelpedOn.isAfter(foretold.p95().toLocalDate());
    long days = Math.round(Math.abs(error));
    Sentence far =
        days == 0
            ? Sentence.of("on the day it was most expected")
            : Sentence.of(
                error < 0
                    ? "{:# day|# days} earlier than most expected"
                    : "{:# day|# days} later than most expected",
                days);
    return new LookBack(
        whelpedOn,
        foretold.median(),
        foretold.p05(),
        foretold.p95(),
        error,
        within,
        dated.quantiles(tools.gestation().lookBack(evidence, season.axis().day(whelped))),
        Sentence.of(
            (within
                    ? "She whelped {}, within the 9-in-10 days."
                    : "She whelped {}, outside the 9-in-10 days.")
                + " For her next season write down her day of ovulation; a record carries shift and"
                + " whelping over itself",
            far));
  }
}
