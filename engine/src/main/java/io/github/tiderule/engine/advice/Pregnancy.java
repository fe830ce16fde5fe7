package io.github.tiderule.engine.advice;

import java.util.List;

/**
 * What a pregnancy asks for.
 *
 * @param milestones in the order of time; empty once she has whelped
 * @param redFlags those of her time, by kind
 */
public record Pregnancy(List<Milestone> milestones, List<RedFlag> redFlags) {

  public Pregnancy {
    milestones = List.copyOf(milestones);
    redFlags = List.copyOf(redFlags);
  }
}
