package io.github.tiderule.cases.published;

import io.github.tiderule.engine.Tiderule;
import io.github.tiderule.rules.parameter.Parameters;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;

/** Measurements on the engine, by name. */
public final class Measures {

  private final Map<String, ToDoubleFunction<List<String>>> known = new HashMap<>();

  private Measures() {}

  /** Measurements on one engine. */
  public static Measures of(Tiderule engine) {
    Measures measures = new Measures();
    Parameters parameters = engine.rules().parameters();
    measures.known.putAll(CurveMeasures.of(parameters).known());
    measures.known.putAll(TimingMeasures.of(parameters).known());
    measures.known.putAll(SeasonMeasures.of(engine).known());
    measures.known.putAll(AssayMeasures.of(parameters).known());
    measures.known.putAll(SemenMeasures.of(parameters).known());
    return measures;
  }

  /**
   * One measurement.
   *
   * @throws IllegalArgumentException if there is none of that name
   */
  public double of(String name, List<String> arguments) {
    ToDoubleFunction<List<String>> measure = known.get(name);
    if (measure == null) {
      throw new IllegalArgumentException("no measure is called " + name);
    }
    return measure.applyAsDouble(arguments);
  }

  static double number(List<String> arguments, int place) {
    return Double.parseDouble(arguments.get(place));
  }
}
