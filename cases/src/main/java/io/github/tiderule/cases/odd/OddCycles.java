package io.github.tiderule.cases.odd;

import io.github.tiderule.engine.CycleRecord;
import java.util.ArrayList;
import java.util.List;

/** Records of odd seasons, for whoever puts other questions to them. */
public final class OddCycles {

  private OddCycles() {}

  /**
   * Seasons of every kind, each at every third evening, by kind, number and day.
   *
   * @param count seasons of each kind
   */
  public static List<Told> of(long seed, int count) {
    List<Told> all = new ArrayList<>();
    for (Kind kind : Kind.values()) {
      for (int number = 0; number < count; number++) {
        List<Asked> asked = Keeping.of(seed, kind, number).asked();
        for (int i = asked.size() - 1; i >= 0; i -= 3) {
          CycleRecord told = asked.get(i).told();
          if (told != null) {
            all.add(new Told(kind + " " + number + ", evening " + i, told));
          }
        }
      }
    }
    return all;
  }

  /** A record and what it is of. */
  public record Told(String name, CycleRecord cycle) {}
}
