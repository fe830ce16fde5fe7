package io.github.tiderule.rules.parameter;

import java.util.List;

/** What came of reading a local protocol. */
public sealed interface OverlayReading {

  /** It can be used. */
  record Read(Overlay overlay) implements OverlayReading {}

  /** It cannot; all that is wrong with it, in the order of the lines. */
  record Refused(List<OverlayFault> faults) implements OverlayReading {

    public Refused {
      faults = List.copyOf(faults);
    }
  }
}
