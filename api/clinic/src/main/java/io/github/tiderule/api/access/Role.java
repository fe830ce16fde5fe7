package io.github.tiderule.api.access;

import io.github.tiderule.rules.fact.Worded;
import java.util.Locale;

/** What a person may do. */
public enum Role implements Worded {
  /** Keeps females of her own. */
  KEEPER,
  /** Keeps females too, sees those shared with the clinic, and may sign a review. */
  VET,
  /** Sees the females shared with the clinic, and changes nothing. */
  READER;

  @Override
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** Whether such a person sees what is shared with the clinic. */
  public boolean isOfTheClinic() {
    return this != KEEPER;
  }

  /** Whether such a person may change anything. */
  public boolean mayWrite() {
    return this != READER;
  }
}
