package io.github.tiderule.format.cycle;

import io.github.tiderule.format.node.Field;
import io.github.tiderule.format.node.Range;
import io.github.tiderule.rules.fact.Digits;
import java.util.Locale;
import java.util.Optional;
import java.util.function.DoubleFunction;
import org.jspecify.annotations.Nullable;

/** Reads what is measured of semen; a number in another unit is refused and says what it may be. */
final class Quantities {

  private static final double MILLION = 1e6;
  private static final Range CELSIUS = Range.of(0, 45, "°C");
  private static final Range CELSIUS_ON_ARRIVAL = Range.of(-30, 60, "°C");
  private static final Range VOLUME = Range.positive(200, "mL");
  private static final Range DENSITY = Range.of(0, 5000, "million per mL");
  private static final Range DENSITY_WANTED = Range.positive(5000, "million per mL");
  private static final Range TOTAL = Range.of(0, 20_000, "million sperm");

  private Quantities() {}

  static @Nullable Double millilitres(Field field) {
    return field.measure(VOLUME, value -> Optional.empty());
  }

  static @Nullable Double percent(Field field) {
    return field.measure(
        BreedingReader.PERCENT,
        value ->
            value > 100 && value <= 1000
                ? Optional.of("No more than all of them can: maybe a digit too many?")
                : Optional.empty());
  }

  static @Nullable Double density(Field field) {
    return field.measure(DENSITY, inMillions(DENSITY));
  }

  static @Nullable Double densityWanted(Field field) {
    return field.measure(DENSITY_WANTED, inMillions(DENSITY_WANTED));
  }

  static @Nullable Double millions(Field field) {
    return field.measure(TOTAL, inMillions(TOTAL));
  }

  static @Nullable Double celsius(Field field) {
    return field.measure(CELSIUS, Quantities::inCelsius);
  }

  /** Of a box as it arrived: one left in the sun is news, not a slip. */
  static @Nullable Double celsiusOnArrival(Field field) {
    return field.measure(CELSIUS_ON_ARRIVAL, Quantities::inCelsius);
  }

  private static DoubleFunction<Optional<String>> inMillions(Range range) {
    return value -> {
      double millions = value / MILLION;
      return millions >= 0.1 && millions <= range.most()
          ? Optional.of("Maybe " + Digits.plain(millions) + "? It is given in millions.")
          : Optional.empty();
    };
  }

  /** Degrees Fahrenheit: °C = (°F − 32) × 5 ÷ 9. */
  private static Optional<String> inCelsius(double value) {
    double celsius = (value - 32) * 5 / 9;
    return value > CELSIUS.most() && celsius <= CELSIUS.most()
        ? Optional.of(
            String.format(
                Locale.ROOT,
                "Maybe %s? %s °F is %s °C.",
                Digits.plain(celsius),
                Digits.plain(value),
                Digits.plain(celsius)))
        : Optional.empty();
  }
}
