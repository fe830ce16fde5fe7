package io.github.tiderule.format.laboratory;

import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.format.cycle.CycleText;
import io.github.tiderule.format.cycle.Reading;
import io.github.tiderule.format.node.Node;
import io.github.tiderule.format.node.NodeText;
import io.github.tiderule.rules.fact.assay.Method;
import io.github.tiderule.rules.fact.observation.Observation;
import io.github.tiderule.rules.fact.observation.Progesterone;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/** The results a season has, with those found for it since; tells a new one from one there. */
public final class KnownResults {

  private final CycleRecord cycle;
  private final Map<String, Progesterone> byId = new LinkedHashMap<>();
  private final Set<String> ids = new TreeSet<>();

  private KnownResults(CycleRecord cycle) {
    this.cycle = cycle;
  }

  /**
   * The results of a season.
   *
   * @param taken ids that no new observation may have, beside those of the season
   */
  public static KnownResults of(CycleRecord cycle, Set<String> taken) {
    KnownResults results = new KnownResults(cycle);
    results.ids.addAll(taken);
    for (Observation observation : cycle.observations()) {
      results.ids.add(observation.id());
      if (observation instanceof Progesterone value) {
        results.byId.put(value.id(), value);
      }
    }
    return results;
  }

  /** An observation as a cycle file of this season would have it, alone at place 0. */
  public Reading reading(Node.Members observation) {
    return CycleText.read(
        CycleText.of(
            cycle.asOf(),
            "{}",
            "{\"zone\":\"" + cycle.zone() + "\",\"firstBlood\":{\"certainty\":\"unknown\"}}",
            List.of(NodeText.of(observation))));
  }

  /** The one result of a reading that was not refused. */
  public static Progesterone only(Reading.Read reading) {
    return (Progesterone) reading.cycle().observations().get(0);
  }

  /** An id for a result drawn at a moment, that no other observation has or had. */
  public String freshId(Instant moment) {
    String plain = "lab-" + moment.toString().replaceFirst(":00Z$", "Z");
    String id = plain;
    for (int i = 2; ids.contains(id); i++) {
      id = plain + "-" + i;
    }
    return id;
  }

  /** Whether an observation has or had this id. */
  public boolean hasId(String id) {
    return ids.contains(id);
  }

  /** The result with an id. */
  public Optional<Progesterone> named(String id) {
    return Optional.ofNullable(byId.get(id));
  }

  /** The result that says the same: one of the two may say less, but nothing else. */
  public Optional<Progesterone> same(Progesterone value) {
    return byId.values().stream().filter(other -> isSame(value, other)).findFirst();
  }

  /** Another result of, perhaps, the same laboratory, drawn at the same moment. */
  public Optional<Progesterone> drawnTogether(Progesterone value) {
    return byId.values().stream()
        .filter(other -> other.at().equals(value.at()))
        .filter(other -> agree(other.laboratory(), value.laboratory()))
        .findFirst();
  }

  /** Takes a result in, in the place of another of the same id. */
  public void put(Progesterone value) {
    byId.put(value.id(), value);
    ids.add(value.id());
  }

  /** Takes a result out; its id stays taken. */
  public void remove(String id) {
    byId.remove(id);
  }

  /** Whether two results say the same, where both say something. */
  public static boolean isSame(Progesterone one, Progesterone other) {
    return one.at().equals(other.at())
        && one.value() == other.value()
        && one.comparator() == other.comparator()
        && agree(one.statedUnit(), other.statedUnit())
        && agree(one.laboratory(), other.laboratory())
        && (one.method() == other.method()
            || one.method() == Method.UNKNOWN
            || other.method() == Method.UNKNOWN);
  }

  /** Whether two say the same, or one of them nothing. */
  private static boolean agree(@Nullable Object one, @Nullable Object other) {
    return one == null || other == null || Objects.equals(one, other);
  }
}
