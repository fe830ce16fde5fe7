package io.github.tiderule.engine.advice.course;

import io.github.tiderule.rules.conclusion.CourseKind;
import io.github.tiderule.rules.sentence.Sentence;
import java.time.OffsetDateTime;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What her values do, in a line of the trade.
 *
 * @param observations what it rests on, in time order
 * @param since the first of what it rests on
 * @param rule the rule that says so
 * @param withdrawn what an earlier answer may have said and holds no longer; absent where nothing
 */
public record SeasonCourse(
    CourseKind kind,
    Sentence text,
    List<String> observations,
    OffsetDateTime since,
    String rule,
    @Nullable Sentence withdrawn) {

  public SeasonCourse {
    observations = List.copyOf(observations);
  }
}
