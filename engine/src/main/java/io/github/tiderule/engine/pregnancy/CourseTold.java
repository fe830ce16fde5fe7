package io.github.tiderule.engine.pregnancy;

import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.course.Caesarean;
import io.github.tiderule.engine.advice.course.LookBack;
import io.github.tiderule.engine.advice.course.Pregnancy;
import io.github.tiderule.engine.advice.course.Whelping;
import io.github.tiderule.engine.season.Care;
import io.github.tiderule.engine.season.Standing;
import java.time.Instant;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * What is told of a pregnancy's course, as far as a season may be talked about.
 *
 * @param pregnancy what is due, what to look out for and what is past
 */
public record CourseTold(
    @Nullable Whelping whelping,
    @Nullable Pregnancy pregnancy,
    @Nullable Caesarean caesarean,
    @Nullable LookBack lookBack) {

  /**
   * Tells.
   *
   * @param course null where nothing dates the season
   * @param care what rules say of it
   * @param then the advice as it was at an earlier moment
   */
  public static CourseTold of(
      @Nullable PregnancyCourse course,
      Standing standing,
      Care care,
      Function<Instant, Advice> then) {
    if (course == null) {
      return new CourseTold(null, null, null, null);
    }
    if (standing.read().vetOnly()) {
      return new CourseTold(null, course.pregnancy(care, false), null, null);
    }
    if (standing instanceof Standing.BrokenOff) {
      return new CourseTold(null, null, null, null);
    }
    boolean stopped = standing instanceof Standing.Stopped;
    boolean undated = standing.read().unsettled() || (stopped && !course.pastBreeding());
    return new CourseTold(
        undated ? null : course.whelping(),
        course.pregnancy(care, true),
        stopped ? null : course.caesarean(care),
        course.lookBack(then));
  }
}
