package io.github.tiderule.engine.explain;

import io.github.tiderule.engine.advice.reasoning.EngineStep;
import io.github.tiderule.engine.advice.reasoning.TraceLine;
import io.github.tiderule.engine.advice.reasoning.TraceStage;
import io.github.tiderule.engine.season.StageRun;
import io.github.tiderule.rules.Chapter;
import io.github.tiderule.rules.Firing;
import io.github.tiderule.rules.StageResult;
import io.github.tiderule.rules.conclusion.Conclusion;
import io.github.tiderule.rules.conclusion.DayReason;
import io.github.tiderule.rules.sentence.Sentence;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Writes the reasoning down in the order of the stages. */
public final class TraceBook {

  private final List<TraceLine> lines = new ArrayList<>();
  private final Map<Integer, Firing> firings = new HashMap<>();

  /** Everything one stage of rules concluded. */
  public void add(StageRun run) {
    add(run.stage().chapter(), run.result());
  }

  /** Everything of one chapter. */
  public void add(Chapter chapter, StageResult result) {
    for (Firing firing : result.firings()) {
      lines.add(
          new TraceLine(
              lines.size() + 1,
              TraceStage.of(chapter),
              firing.rule().id(),
              firing.rule().title(),
              firing.observations(),
              firing.concluded().stream().map(TraceBook::words).toList(),
              firing.rule().sources()));
      firings.put(lines.size(), firing);
    }
  }

  /** The firings by the number of their line; the engine's own steps have none. */
  public Map<Integer, Firing> firings() {
    return Map.copyOf(firings);
  }

  /** A conclusion in words that stand by themselves. */
  private static Sentence words(Conclusion conclusion) {
    return conclusion instanceof DayReason reason
        ? Sentence.of("{} {}: {}", reason.day(), reason.effect(), reason.words())
        : conclusion.words();
  }

  /** One step of the engine's own. */
  public void add(
      TraceStage stage, EngineStep step, List<String> matched, List<Sentence> concluded) {
    lines.add(
        new TraceLine(
            lines.size() + 1, stage, step.id(), step.title(), matched, concluded, step.sources()));
  }

  public List<TraceLine> lines() {
    return List.copyOf(lines);
  }
}
