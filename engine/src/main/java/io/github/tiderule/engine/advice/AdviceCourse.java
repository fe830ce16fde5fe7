package io.github.tiderule.engine.advice;

import io.github.tiderule.engine.advice.course.BeforeSeason;
import io.github.tiderule.engine.advice.course.Caesarean;
import io.github.tiderule.engine.advice.course.LookBack;
import io.github.tiderule.engine.advice.course.Pregnancy;
import io.github.tiderule.engine.advice.course.Whelping;
import org.jspecify.annotations.Nullable;

/**
 * Before the season, and after breeding: pregnancy and whelping.
 *
 * @param beforeSeason absent where the file tells nothing of the time before a season
 * @param whelping absent where nothing can be whelped
 * @param pregnancy absent before a breeding is done and weeks after whelping
 * @param caesarean absent until term is near
 * @param lookBack absent until she has whelped
 */
public record AdviceCourse(
    @Nullable BeforeSeason beforeSeason,
    @Nullable Whelping whelping,
    @Nullable Pregnancy pregnancy,
    @Nullable Caesarean caesarean,
    @Nullable LookBack lookBack) {

  /** Nothing said. */
  public static final AdviceCourse NONE = new AdviceCourse(null, null, null, null, null);

  public AdviceCourse withBeforeSeason(@Nullable BeforeSeason beforeSeason) {
    return new AdviceCourse(beforeSeason, whelping, pregnancy, caesarean, lookBack);
  }

  public AdviceCourse withWhelping(@Nullable Whelping whelping) {
    return new AdviceCourse(beforeSeason, whelping, pregnancy, caesarean, lookBack);
  }

  public AdviceCourse withPregnancy(@Nullable Pregnancy pregnancy) {
    return new AdviceCourse(beforeSeason, whelping, pregnancy, caesarean, lookBack);
  }

  public AdviceCourse withCaesarean(@Nullable Caesarean caesarean) {
    return new AdviceCourse(beforeSeason, whelping, pregnancy, caesarean, lookBack);
  }

  public AdviceCourse withLookBack(@Nullable LookBack lookBack) {
    return new AdviceCourse(beforeSeason, whelping, pregnancy, caesarean, lookBack);
  }
}
