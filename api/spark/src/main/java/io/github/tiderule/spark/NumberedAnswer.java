package io.github.tiderule.spark;

import io.github.tiderule.api.command.stream.LineAnswer;
import java.io.Serializable;

/**
 * The answer to one line.
 *
 * @param number number of the line, from 1
 * @param outcome what came of it
 * @param text advice or problems, without a line feed
 */
record NumberedAnswer(long number, LineAnswer.Outcome outcome, String text)
    implements Serializable {

  /** The answer {@code batch} would give. */
  static NumberedAnswer of(NumberedLine line) {
    LineAnswer answer =
        LineAnswer.of(line.number(), line.utf8(), cycle -> JvmEngine.tiderule().advise(cycle));
    return new NumberedAnswer(line.number(), answer.outcome(), answer.text().stripTrailing());
  }

  boolean isAdvice() {
    return outcome == LineAnswer.Outcome.ANSWERED;
  }
}
