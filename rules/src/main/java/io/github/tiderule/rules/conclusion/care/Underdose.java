package io.github.tiderule.rules.conclusion.care;

import io.github.tiderule.rules.conclusion.Conclusion;
import io.github.tiderule.rules.fact.semen.Route;
import io.github.tiderule.rules.fact.semen.Semen;
import io.github.tiderule.rules.sentence.Sentence;
import java.util.List;

/**
 * The semen in hand does not make the doses it is to be made into.
 *
 * @param divided whether it was to be more than one dose
 */
public record Underdose(Semen semen, Route route, boolean divided) implements Conclusion {

  @Override
  public List<String> observations() {
    return List.of();
  }

  @Override
  public Sentence words() {
    return Sentence.of("A {} dose is below the usual least for this route", semen);
  }
}
