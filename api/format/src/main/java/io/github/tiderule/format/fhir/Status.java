package io.github.tiderule.format.fhir;

import io.github.tiderule.rules.fact.Worded;
import java.util.Locale;

/** How far a result has come; the words are those of FHIR's ObservationStatus. */
enum Status implements Worded {
  REGISTERED,
  PRELIMINARY,
  FINAL,
  AMENDED,
  CORRECTED,
  CANCELLED,
  ENTERED_IN_ERROR,
  UNKNOWN;

  @Override
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** Whether it has a value to be taken. */
  boolean hasResult() {
    return this == FINAL || changesResult();
  }

  /** Whether it takes the place of what was reported before. */
  boolean changesResult() {
    return this == AMENDED || this == CORRECTED;
  }
}
