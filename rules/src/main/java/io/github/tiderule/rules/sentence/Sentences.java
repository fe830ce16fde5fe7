package io.github.tiderule.rules.sentence;

import io.github.tiderule.rules.parameter.Parameter;
import io.github.tiderule.rules.parameter.Parameters;
import java.util.function.Function;

/**
 * Makes sentences whose numbers are those of the parameters in force. The rules know it as the
 * global {@code say}.
 */
public final class Sentences {

  private final Function<String, Part.Quantity> quantities;

  private Sentences(Function<String, Part.Quantity> quantities) {
    this.quantities = quantities;
  }

  /** Sentences with the numbers of some parameters. */
  public static Sentences with(Parameters parameters) {
    return new Sentences(
        id -> {
          Parameter parameter =
              parameters
                  .find(id)
                  .orElseThrow(() -> new IllegalArgumentException("no parameter " + id));
          return new Part.Quantity(parameter.value(), id);
        });
  }

  /**
   * A sentence.
   *
   * @param template with one empty place for each thing; named places take parameters
   * @param things what is told of: an observation or a level, a number, a day, a word of the trade,
   *     a laboratory with its method, another sentence, or any {@link Part}
   * @throws IllegalArgumentException if a place stays empty, a thing has no place, or a parameter
   *     is not known
   */
  public Sentence that(String template, Object... things) {
    return Sentence.filled(template, things, quantities);
  }
}
