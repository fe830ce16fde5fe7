package io.github.tiderule.rules.conclusion;

import io.github.tiderule.rules.fact.semen.Route;
import io.github.tiderule.rules.sentence.Sentence;
import java.util.List;

/** The plan is computed for another route than the one asked for. */
public record RouteInstead(Route route, Sentence words) implements Conclusion {

  @Override
  public List<String> observations() {
    return List.of();
  }
}
