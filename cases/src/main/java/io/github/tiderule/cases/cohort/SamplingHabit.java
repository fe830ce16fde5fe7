package io.github.tiderule.cases.cohort;

import java.util.Optional;

/** How somebody tests a female; sees results as they come, never the truth. */
interface SamplingHabit {

  /** The habit in a few words, for the report. */
  String words();

  /** Her season as this habit saw it; nothing where the season is not of the kind looked for. */
  Optional<Season> sample(Bitch bitch, Draws draws);
}
