package io.github.tiderule.rules.conclusion;

import java.util.List;

/**
 * What the accepted observations show.
 *
 * @param observations ids it rests on, in time order; empty when it rests on the season alone
 */
public record Finding(FindingKind kind, List<String> observations, String sentence)
    implements Conclusion {

  public Finding {
    observations = List.copyOf(observations);
  }

  /** A finding that rests on some observations. */
  public static Finding of(FindingKind kind, String sentence, String... observations) {
    return new Finding(kind, List.of(observations), sentence);
  }
}
