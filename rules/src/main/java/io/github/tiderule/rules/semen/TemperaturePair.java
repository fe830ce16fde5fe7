package io.github.tiderule.rules.semen;

import io.github.tiderule.rules.fact.Digits;

/** Two liquids that are to be brought together, in degrees Celsius. */
public record TemperaturePair(double semenC, double extenderC) {

  /** How far they are apart, in degrees Celsius. */
  public double apartC() {
    return Digits.significant(Math.abs(semenC - extenderC), 12);
  }
}
