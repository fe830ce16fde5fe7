package io.github.tiderule.engine.advice.course;

import io.github.tiderule.rules.conclusion.care.MilestoneKind;
import io.github.tiderule.rules.sentence.Sentence;
import java.time.OffsetDateTime;
import java.util.List;

/**
 * Something due in a pregnancy, counted from ovulation and never from a mating.
 *
 * @param kind as in {@code scan}
 * @param from 5th percentile of when it is due, over ovulation and its own window
 * @param to 95th percentile
 * @param rule the rule that names it
 */
public record Milestone(
    MilestoneKind kind,
    OffsetDateTime from,
    OffsetDateTime to,
    Sentence title,
    String rule,
    List<String> sources) {

  public Milestone {
    sources = List.copyOf(sources);
  }
}
