package io.github.tiderule.rules.semen;

import io.github.tiderule.rules.fact.semen.Semen;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * What a file says of one insemination and the semen for it.
 *
 * @param at when it is to be, not before the semen was collected, if said
 * @param extenderTemperatureC of the extender at hand, degrees Celsius, 0–45, if measured
 */
public record Insemination(
    @Nullable Instant at,
    @Nullable Ejaculate ejaculate,
    @Nullable Certificate certificate,
    @Nullable Arrival arrival,
    Wanted wanted,
    @Nullable Double extenderTemperatureC) {

  /** One of which nothing is said yet. */
  public static Insemination unknown() {
    return new Insemination(null, null, null, null, Wanted.nothing(), null);
  }

  /** With the moment it is to be, not before the semen was collected. */
  public Insemination at(Instant moment) {
    return new Insemination(moment, ejaculate, certificate, arrival, wanted, extenderTemperatureC);
  }

  /** With fresh semen. */
  public Insemination ejaculate(Ejaculate fresh) {
    return new Insemination(at, fresh, certificate, arrival, wanted, extenderTemperatureC);
  }

  /** With frozen semen. */
  public Insemination certificate(Certificate frozen) {
    return new Insemination(at, ejaculate, frozen, arrival, wanted, extenderTemperatureC);
  }

  /** With chilled semen. */
  public Insemination arrival(Arrival chilled) {
    return new Insemination(at, ejaculate, certificate, chilled, wanted, extenderTemperatureC);
  }

  /** With what it is to be made into. */
  public Insemination wanted(Wanted made) {
    return new Insemination(at, ejaculate, certificate, arrival, made, extenderTemperatureC);
  }

  /**
   * With the temperature of the extender at hand.
   *
   * @param celsius degrees Celsius, 0–45
   */
  public Insemination extenderTemperatureC(double celsius) {
    return new Insemination(at, ejaculate, certificate, arrival, wanted, celsius);
  }

  /** The kind of semen that is described: frozen before chilled before fresh; null for none. */
  public @Nullable Semen described() {
    return certificate != null
        ? Semen.FROZEN
        : arrival != null ? Semen.CHILLED : ejaculate != null ? Semen.FRESH : null;
  }
}
