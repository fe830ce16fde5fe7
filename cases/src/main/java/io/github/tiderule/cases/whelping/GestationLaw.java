package io.github.tiderule.cases.whelping;

import io.github.tiderule.cases.cohort.Bitch;
import io.github.tiderule.cases.cohort.Draws;

/** How long females carry, in one of two worlds. */
public enum GestationLaw {
  /** As mir-2011 and eilts-2005 found it: 63.1 d from ovulation, widely, small litters later. */
  FROM_OVULATION("63 d from ovulation, spread 1.9 d") {
    @Override
    double whelping(Bitch bitch, int pups, Draws draws) {
      double litter = pups <= 4 ? 0.65 : -0.35;
      double sd = draws.chance(0.1) ? 3 : 1.6;
      return bitch.ovulation() + 63.1 + litter + draws.normal(0, sd);
    }
  },
  /** As decramer-2017 found it: 57 d from the shift of the smear, narrowly. */
  FROM_SHIFT("57 d from the shift, spread 0.9 d") {
    @Override
    double whelping(Bitch bitch, int pups, Draws draws) {
      double sd = draws.chance(0.1) ? 1.6 : 0.8;
      return bitch.dioestrus() + 57 + draws.normal(0, sd);
    }
  };

  private final String words;

  GestationLaw(String words) {
    this.words = words;
  }

  /** What the world is called in a table. */
  public String words() {
    return words;
  }

  /** When she whelps, days on the cohort's calendar. */
  abstract double whelping(Bitch bitch, int pups, Draws draws);
}
