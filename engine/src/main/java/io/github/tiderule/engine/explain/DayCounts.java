package io.github.tiderule.engine.explain;

import io.github.tiderule.engine.advice.reasoning.DayCount;
import io.github.tiderule.engine.season.Care;
import io.github.tiderule.rules.StageResult.Ruled;
import io.github.tiderule.rules.conclusion.care.RuleOfThumb;
import io.github.tiderule.rules.conclusion.care.Thumb;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Tells what rules of thumb make of a season. */
public final class DayCounts {

  private DayCounts() {}

  /**
   * What each says, by kind.
   *
   * @param planned the first day of the plan; null where there is none
   */
  public static List<DayCount> of(Care care, @Nullable LocalDate planned) {
    return care.ruled(RuleOfThumb.class)
        .filter(ruled -> planned != null || !toCome(ruled.conclusion()))
        .map(
            ruled -> count(ruled, toCome(ruled.conclusion()) ? planned : ruled.conclusion().from()))
        .sorted(Comparator.comparing(DayCount::kind).thenComparing(DayCount::rule))
        .toList();
  }

  private static DayCount count(Ruled<RuleOfThumb> ruled, @Nullable LocalDate from) {
    RuleOfThumb thumb = ruled.conclusion();
    return new DayCount(
        thumb.thumb(),
        thumb.words(),
        from,
        days(from, thumb),
        thumb.observations(),
        thumb.but(),
        ruled.rule().id(),
        ruled.rule().sources());
  }

  private static boolean toCome(RuleOfThumb thumb) {
    return thumb.thumb() == Thumb.WHELPING && thumb.from() == null;
  }

  private static List<LocalDate> days(@Nullable LocalDate from, RuleOfThumb thumb) {
    return from == null
        ? List.of()
        : thumb.after().stream().map(days -> from.plusDays(Math.round(days))).toList();
  }
}
