package io.github.tiderule.engine.days;

import java.util.List;

/**
 * A set of slots with its egg share.
 *
 * @param slots places in the list of slots, in time order
 * @param mean expected egg share
 * @param p10 tenth percentile over where ovulation may lie
 */
public record ScoredPlan(List<Integer> slots, double mean, double p10) {

  public ScoredPlan {
    slots = List.copyOf(slots);
  }
}
