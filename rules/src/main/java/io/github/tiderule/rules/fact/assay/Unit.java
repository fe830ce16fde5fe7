package io.github.tiderule.rules.fact.assay;

import io.github.tiderule.rules.fact.Digits;
import io.github.tiderule.rules.fact.Worded;

/**
 * A unit of progesterone concentration.
 *
 * <p>1 ng/mL = 1 µg/L = 3.18 nmol/L (molar mass 314.46 g/mol, from memory; the factor 3.18 as
 * printed in laboratory handbooks).
 */
public enum Unit implements Worded {
  NG_PER_ML("ng/mL", 1.0),
  NMOL_PER_L("nmol/L", 3.18),
  UG_PER_L("ug/L", 1.0);

  private final String word;
  private final double perNgPerMl;

  Unit(String word, double perNgPerMl) {
    this.word = word;
    this.perNgPerMl = perNgPerMl;
  }

  @Override
  public String word() {
    return word;
  }

  /** The unit it is taken for by mistake: that of the other scale. */
  public Unit other() {
    return this == NMOL_PER_L ? NG_PER_ML : NMOL_PER_L;
  }

  /** Converts a concentration in this unit to ng/mL. The result is rounded to twelve digits. */
  public double toNgPerMl(double value) {
    return Digits.significant(value / perNgPerMl, 12);
  }

  /** Converts a concentration in ng/mL to this unit. */
  public double fromNgPerMl(double ngPerMl) {
    return ngPerMl * perNgPerMl;
  }
}
