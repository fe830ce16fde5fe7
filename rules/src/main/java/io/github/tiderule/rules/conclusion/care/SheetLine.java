package io.github.tiderule.rules.conclusion.care;

import io.github.tiderule.rules.conclusion.Conclusion;
import io.github.tiderule.rules.sentence.Sentence;
import java.util.List;

/**
 * A line of the insemination sheet: a step, or a piece of advice.
 *
 * @param place where it stands among the lines of its part; the least comes first
 * @param veterinaryAct whether a vet does it, or has to in many countries
 */
public record SheetLine(SheetPart part, int place, boolean veterinaryAct, Sentence words)
    implements Conclusion {

  @Override
  public List<String> observations() {
    return List.of();
  }
}
