package io.github.tiderule.engine.change;

import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.reasoning.Influence;
import io.github.tiderule.engine.change.ObservationChange.Kind;
import io.github.tiderule.rules.fact.observation.Observation;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.SortedSet;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/** Compares the observations of two records and what the answers made of them. */
final class ObservationChanges {

  private ObservationChanges() {}

  static List<ObservationChange> between(Told before, Told after) {
    SortedSet<String> ids = new TreeSet<>();
    before.cycle().observations().forEach(one -> ids.add(one.id()));
    after.cycle().observations().forEach(one -> ids.add(one.id()));
    List<ObservationChange> changes = new ArrayList<>();
    for (String id : ids) {
      Kind kind = kind(id, before, after);
      if (kind != null) {
        boolean gone = kind == Kind.REMOVED || kind == Kind.NO_LONGER_USED;
        Influence influence = influence(gone ? before.advice() : after.advice(), id);
        changes.add(
            new ObservationChange(
                id,
                kind,
                influence == null ? null : influence.ovulationShiftHours(),
                influence == null ? null : influence.widthChangeHours()));
      }
    }
    changes.sort(
        Comparator.comparingDouble((ObservationChange one) -> -moves(one))
            .thenComparing(ObservationChange::observation));
    return changes;
  }

  private static double moves(ObservationChange change) {
    Double shift = change.ovulationShiftHours();
    return shift == null ? -1 : Math.abs(shift);
  }

  private static @Nullable Kind kind(String id, Told before, Told after) {
    Observation was = find(before.cycle(), id);
    Observation is = find(after.cycle(), id);
    if (was == null) {
      return Kind.ADDED;
    }
    if (is == null) {
      return Kind.REMOVED;
    }
    if (!Objects.equals(was, is)) {
      return Kind.CORRECTED;
    }
    boolean used = influence(before.advice(), id) != null;
    boolean uses = influence(after.advice(), id) != null;
    return used == uses ? null : uses ? Kind.NOW_USED : Kind.NO_LONGER_USED;
  }

  private static @Nullable Observation find(CycleRecord cycle, String id) {
    return cycle.observations().stream()
        .filter(one -> one.id().equals(id))
        .findFirst()
        .orElse(null);
  }

  private static @Nullable Influence influence(Advice advice, String id) {
    return advice.reasoning().influence().stream()
        .filter(one -> one.observation().equals(id))
        .findFirst()
        .orElse(null);
  }
}
