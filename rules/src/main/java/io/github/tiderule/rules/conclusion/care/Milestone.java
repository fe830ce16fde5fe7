package io.github.tiderule.rules.conclusion.care;

import io.github.tiderule.rules.conclusion.Conclusion;
import io.github.tiderule.rules.sentence.Sentence;
import java.util.List;

/**
 * Something due in a pregnancy.
 *
 * @param fromDays days after ovulation at which it begins to be due
 * @param toDays days after ovulation until which it is due, not less
 */
public record Milestone(MilestoneKind kind, double fromDays, double toDays, Sentence words)
    implements Conclusion {

  @Override
  public List<String> observations() {
    return List.of();
  }
}
