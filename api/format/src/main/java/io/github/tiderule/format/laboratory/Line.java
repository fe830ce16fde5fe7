package io.github.tiderule.format.laboratory;

import io.github.tiderule.format.node.Node;
import io.github.tiderule.rules.fact.Worded;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * What becomes of one line of the table.
 *
 * @param number number of the line in the file, from 1; the names of the columns stand on the first
 * @param message what is to be said of it: why it is refused, or which observation it repeats
 * @param observation as it would stand in a cycle file; absent unless it is new
 */
public record Line(
    int number, Outcome outcome, String message, Node.@Nullable Members observation) {

  /** What becomes of a line. */
  public enum Outcome implements Worded {
    /** It would be added. */
    NEW,
    /** The season has it already, or an earlier line says the same. */
    DUPLICATE,
    /** It cannot be used. */
    REFUSED;

    @Override
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  static Line refused(int number, String message) {
    return new Line(number, Outcome.REFUSED, message, null);
  }
}
