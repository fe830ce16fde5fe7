package io.github.tiderule.rules.conclusion.care;

import io.github.tiderule.rules.conclusion.Conclusion;
import io.github.tiderule.rules.kennel.Whose;
import io.github.tiderule.rules.sentence.Sentence;
import java.util.List;

/**
 * Something to see to before a season.
 *
 * @param whose whom it is about
 * @param state whether it is due, in order, or to be asked
 * @param veterinaryAct whether a vet does it
 */
public record SeasonCheck(Whose whose, CheckState state, boolean veterinaryAct, Sentence words)
    implements Conclusion {

  @Override
  public List<String> observations() {
    return List.of();
  }
}
