package io.github.tiderule.format.fhir;

import io.github.tiderule.rules.fact.assay.Unit;
import java.util.Arrays;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * What LOINC calls progesterone in serum or plasma. The code of the mass concentration is widely
 * printed; that of the molar one, and both names, are from memory.
 */
enum Analyte {
  MASS("2839-9", "Progesterone [Mass/volume] in Serum or Plasma"),
  MOLES("14890-4", "Progesterone [Moles/volume] in Serum or Plasma");

  /** The code system. */
  static final String LOINC = "http://loinc.org";

  private final String code;
  private final String display;

  Analyte(String code, String display) {
    this.code = code;
    this.display = display;
  }

  String code() {
    return code;
  }

  String display() {
    return display;
  }

  /** Whether a value of this can be in that unit. */
  boolean has(Unit unit) {
    return this == of(unit);
  }

  static Optional<Analyte> of(String code) {
    return Arrays.stream(values()).filter(one -> one.code.equals(code)).findFirst();
  }

  /** What a value in that unit is. */
  static Analyte of(Unit unit) {
    return unit == Unit.NMOL_PER_L ? MOLES : MASS;
  }

  /** The codes and their names, for messages. */
  static String all() {
    return Arrays.stream(values())
        .map(one -> one.code + " (" + one.display + ")")
        .collect(Collectors.joining(", "));
  }
}
