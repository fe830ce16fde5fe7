package io.github.tiderule.engine.insemination;

import io.github.tiderule.rules.fact.semen.SemenColour;
import io.github.tiderule.rules.parameter.Parameters;
import java.util.Optional;

/** The concentration that goes with a look (thomas-2013). */
final class LookDensity {

  private LookDensity() {}

  /**
   * Million sperm per mL; empty for a look without a published range: clear fluid, which may hold
   * none, and every colour that tells of something else than sperm.
   */
  static Optional<Span> of(SemenColour look, Parameters parameters) {
    return switch (look) {
      case CREAMY ->
          span(parameters, "insemination.density.creamy-least", "insemination.density.creamy-most");
      case MILKY ->
          span(
              parameters,
              "insemination.density.full-milk-least",
              "insemination.density.full-milk-most");
      case SKIMMED ->
          span(
              parameters,
              "insemination.density.skim-milk-least",
              "insemination.density.skim-milk-most");
      case TRANSLUCENT ->
          Optional.of(new Span(0, parameters.value("insemination.density.translucent-most")));
      case CLEAR, YELLOW, PINK, RED, GREEN -> Optional.empty();
    };
  }

  private static Optional<Span> span(Parameters parameters, String least, String most) {
    return Optional.of(new Span(parameters.value(least), parameters.value(most)));
  }
}
