package io.github.tiderule.engine.advice;

import io.github.tiderule.rules.sentence.Sentence;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What to test next, and what it would change.
 *
 * @param next absent where no test would help
 * @param noTestBecause why no test is advised, in words; absent where one is
 * @param wouldChange results that would change the plan
 */
public record AdviceTesting(
    @Nullable NextTest next, @Nullable Sentence noTestBecause, List<Change> wouldChange) {

  /** Nothing said. */
  public static final AdviceTesting NONE = new AdviceTesting(null, null, List.of());

  public AdviceTesting {
    wouldChange = List.copyOf(wouldChange);
  }

  public AdviceTesting withNext(@Nullable NextTest next) {
    return new AdviceTesting(next, noTestBecause, wouldChange);
  }

  public AdviceTesting withNoTestBecause(@Nullable Sentence noTestBecause) {
    return new AdviceTesting(next, noTestBecause, wouldChange);
  }

  public AdviceTesting withWouldChange(List<Change> wouldChange) {
    return new AdviceTesting(next, noTestBecause, wouldChange);
  }
}
