package io.github.tiderule.rules;

import io.github.tiderule.rules.conclusion.care.Underdose;
import io.github.tiderule.rules.fact.semen.Route;
import io.github.tiderule.rules.fact.semen.Semen;
import io.github.tiderule.rules.semen.Arrival;
import io.github.tiderule.rules.semen.InseminationDay;
import io.github.tiderule.rules.semen.TemperaturePair;
import io.github.tiderule.rules.semen.UsableSperm;
import java.time.Duration;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * Facts about the semen in hand, in the words of a test line: {@code usable fresh vaginal 60 72 2}
 * is in millions, {@code arrived c=8 old=30 ml=10 per=5 sent=300} in degrees Celsius and hours.
 */
final class SheetFacts {

  private static final double MILLION = 1e6;

  private SheetFacts() {}

  static Object of(Words w, Instant now) {
    return switch (w.get(0)) {
      case "ready" -> new InseminationDay(semen(w), route(w));
      case "usable" ->
          new UsableSperm(
              semen(w), route(w), w.number(3) * MILLION, w.number(4) * MILLION, (int) w.number(5));
      case "extender" -> new TemperaturePair(w.number(1), w.number(2));
      case "underdose" -> new Underdose(semen(w), route(w), w.has("divided"));
      default -> arrival(w, now);
    };
  }

  private static Arrival arrival(Words w, Instant now) {
    @Nullable Double old = w.keyNumber("old");
    return new Arrival(
        old == null ? null : now.minus(Duration.ofMinutes(Math.round(60 * old))),
        null,
        w.keyNumber("c"),
        w.keyNumber("ml"),
        w.keyNumber("per"),
        w.keyNumber("sent"),
        null,
        null);
  }

  private static Semen semen(Words w) {
    return FactLine.word(Semen.values(), w.get(1));
  }

  private static Route route(Words w) {
    return FactLine.word(Route.values(), w.get(2));
  }
}
