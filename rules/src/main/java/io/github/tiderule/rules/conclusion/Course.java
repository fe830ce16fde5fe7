package io.github.tiderule.rules.conclusion;

import io.github.tiderule.rules.sentence.Sentence;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What the values of a season do, in the trade's words.
 *
 * @param observations ids it rests on, in time order
 * @param since the first of what it rests on
 * @param lead what is done about it before anything else; absent where it calls for nothing
 */
public record Course(
    CourseKind kind,
    List<String> observations,
    Instant since,
    Sentence words,
    @Nullable Sentence lead)
    implements Conclusion {

  public Course {
    observations = List.copyOf(observations);
  }

  /** A course that calls for nothing by itself. */
  public static Course of(CourseKind kind, Instant since, Sentence words, String... observations) {
    return new Course(kind, List.of(observations), since, words, null);
  }

  /**
   * Whether no day is planned before another value: the values do not bear one. A single odd one
   * leaves the rise before it standing.
   */
  public boolean waits() {
    return lead != null && kind != CourseKind.ODD_VALUE;
  }

  /** With what is done about it first. */
  public Course first(Sentence act) {
    return new Course(kind, observations, since, words, act);
  }
}
