package io.github.tiderule.engine.advice.reasoning;

import io.github.tiderule.rules.sentence.Sentence;
import java.util.List;

/**
 * One step of the reasoning.
 *
 * @param seq from 1, in the order of the stages
 * @param matched ids of the observations it rests on
 * @param concluded in words, at least one
 */
public record TraceLine(
    int seq,
    TraceStage stage,
    String rule,
    String title,
    List<String> matched,
    List<Sentence> concluded,
    List<String> sources) {

  public TraceLine {
    matched = List.copyOf(matched);
    concluded = List.copyOf(concluded);
    sources = List.copyOf(sources);
  }
}
