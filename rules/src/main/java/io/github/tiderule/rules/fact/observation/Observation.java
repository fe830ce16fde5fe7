package io.github.tiderule.rules.fact.observation;

import io.github.tiderule.rules.fact.Named;
import java.time.Instant;

/** One thing that was measured, seen or done, as it was reported. */
public sealed interface Observation extends Named
    permits Progesterone,
        ProgesteroneBand,
        LhTest,
        Smear,
        Vaginoscopy,
        Sign,
        OvaryScan,
        BreedingDone,
        PregnancyScan,
        Radiograph,
        BodyTemperature {

  /** The observation's own name; unique within one cycle. */
  String id();

  @Override
  default String named() {
    return id();
  }

  /** When it was drawn, seen or done. */
  Instant at();

  /**
   * The same observation under another id.
   *
   * @param id at most 64 characters, unique within one cycle
   */
  Observation withId(String id);

  /** The id of what nobody has named yet; a cycle that is built step by step gives it one. */
  String UNNAMED = "";
}
