package io.github.tiderule.engine.advice.course;

import java.util.List;

/**
 * What a pregnancy asks for, and what is seen of it.
 *
 * @param milestones in the order of time; empty once she has whelped or is known not to be pregnant
 * @param redFlags those of her time, by kind
 * @param happened what is past, in the order of time
 */
public record Pregnancy(
    List<Milestone> milestones, List<RedFlag> redFlags, List<Happened> happened) {

  public Pregnancy {
    milestones = List.copyOf(milestones);
    redFlags = List.copyOf(redFlags);
    happened = List.copyOf(happened);
  }
}
