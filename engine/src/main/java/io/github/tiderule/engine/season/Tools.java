package io.github.tiderule.engine.season;

import io.github.tiderule.engine.days.EggModel;
import io.github.tiderule.engine.days.Planner;
import io.github.tiderule.engine.timeline.Timeline;
import io.github.tiderule.engine.whelping.Gestation;
import io.github.tiderule.rules.RuleBase;
import io.github.tiderule.rules.sentence.Sentences;

/** What every evaluation uses. Immutable and safe for use by many threads. */
public record Tools(
    RuleBase rules, Timeline timeline, EggModel eggs, Planner planner, Gestation gestation) {

  public static Tools over(RuleBase rules) {
    return new Tools(
        rules,
        Timeline.of(rules.parameters()),
        new EggModel(rules.parameters()),
        new Planner(rules.parameters()),
        Gestation.of(rules.parameters()));
  }

  /** Makes sentences whose numbers are those of the parameters in force. */
  public Sentences say() {
    return rules.sentences();
  }

  /** The value of a parameter. */
  public double value(String id) {
    return rules.parameters().value(id);
  }
}
