package io.github.tiderule.engine.explain;

import io.github.tiderule.engine.advice.Warning;
import io.github.tiderule.rules.StageResult;
import io.github.tiderule.rules.conclusion.care.Caution;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/** Puts cautions in the order they are told in. */
public final class Warnings {

  private Warnings() {}

  /** Cautions as they are told, the gravest first and none twice. */
  public static List<Warning> of(Stream<StageResult.Ruled<Caution>> cautions) {
    return cautions
        .sorted(
            Comparator.comparing((StageResult.Ruled<Caution> ruled) -> ruled.conclusion().level())
                .thenComparing(ruled -> ruled.rule().id()))
        .map(
            ruled ->
                new Warning(
                    ruled.conclusion().level(),
                    ruled.conclusion().words(),
                    ruled.rule().id(),
                    ruled.rule().sources()))
        .distinct()
        .toList();
  }
}
