package io.github.tiderule.engine.season;

import io.github.tiderule.rules.StageResult;
import io.github.tiderule.rules.conclusion.Conclusion;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;

/**
 * What the stages of care concluded, told as one chapter.
 *
 * @param runs each stage once, in the order it ran
 * @param result what all of them concluded
 */
public record Care(List<StageRun> runs, StageResult result) {

  /** Of some stages. */
  public static Care of(StageRun... runs) {
    return new Care(
        List.of(runs), StageResult.together(Arrays.stream(runs).map(StageRun::result).toList()));
  }

  /** All conclusions of one kind, in order. */
  public <T extends Conclusion> List<T> all(Class<T> kind) {
    return result.all(kind);
  }

  /** All conclusions of one kind, each with the rule that drew it. */
  public <T extends Conclusion> Stream<StageResult.Ruled<T>> ruled(Class<T> kind) {
    return result.ruled(kind);
  }
}
