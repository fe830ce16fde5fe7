package io.github.tiderule.spark;

import io.github.tiderule.api.command.stream.LineAnswer.Outcome;
import java.util.Map;

/**
 * How many lines came to what.
 *
 * @param answered lines with advice
 * @param refused lines that are no cycle file
 * @param faulty lines that a fault of ours kept from an answer
 */
record Written(long answered, long refused, long faulty) {

  /** From how many answers have an outcome of that name. */
  static Written of(Map<String, Long> counts) {
    return new Written(
        counts.getOrDefault(Outcome.ANSWERED.name(), 0L),
        counts.getOrDefault(Outcome.REFUSED.name(), 0L),
        counts.getOrDefault(Outcome.FAULT.name(), 0L));
  }

  String words() {
    return answered
        + " lines answered, "
        + refused
        + " refused"
        + (faulty == 0 ? "" : ", " + faulty + " with a fault of ours: please report it");
  }
}
