package io.github.tiderule.engine.explain;

import io.github.tiderule.engine.advice.reasoning.Disagreement;
import io.github.tiderule.engine.season.Care;
import io.github.tiderule.rules.conclusion.care.Leaning;
import io.github.tiderule.rules.conclusion.care.Position;
import io.github.tiderule.rules.conclusion.care.Topic;
import java.util.ArrayList;
import java.util.List;

/** Brings together what rules of different schools hold about the same topic. */
public final class Disagreements {

  private Disagreements() {}

  /** The topics on which at least two schools speak and the plan leans some way. */
  public static List<Disagreement> of(Care care) {
    List<Disagreement> found = new ArrayList<>();
    for (Topic topic : Topic.values()) {
      List<Disagreement.Position> positions =
          care.ruled(Position.class)
              .filter(ruled -> ruled.conclusion().about() == topic)
              .map(
                  ruled ->
                      new Disagreement.Position(
                          ruled.rule().id(), ruled.conclusion().words(), ruled.rule().sources()))
              .toList();
      if (positions.size() > 1) {
        care.all(Leaning.class).stream()
            .filter(leaning -> leaning.about() == topic)
            .map(
                leaning ->
                    new Disagreement(topic.words(), positions, leaning.words(), leaning.why()))
            .forEach(found::add);
      }
    }
    return List.copyOf(found);
  }
}
