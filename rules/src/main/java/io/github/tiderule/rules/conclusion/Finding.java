package io.github.tiderule.rules.conclusion;

import io.github.tiderule.rules.sentence.Sentence;
import java.util.List;

/**
 * What the accepted observations show.
 *
 * @param observations ids it rests on, in time order; empty when it rests on the season alone
 */
public record Finding(FindingKind kind, List<String> observations, Sentence words)
    implements Conclusion {

  public Finding {
    observations = List.copyOf(observations);
  }

  /** A finding that rests on some observations. */
  public static Finding of(FindingKind kind, Sentence words, String... observations) {
    return new Finding(kind, List.of(observations), words);
  }
}
