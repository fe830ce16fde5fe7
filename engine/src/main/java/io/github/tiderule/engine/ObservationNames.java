package io.github.tiderule.engine;

import static java.util.Map.entry;

import io.github.tiderule.rules.fact.observation.BodyTemperature;
import io.github.tiderule.rules.fact.observation.BreedingDone;
import io.github.tiderule.rules.fact.observation.LhTest;
import io.github.tiderule.rules.fact.observation.Observation;
import io.github.tiderule.rules.fact.observation.OvaryScan;
import io.github.tiderule.rules.fact.observation.PregnancyScan;
import io.github.tiderule.rules.fact.observation.Progesterone;
import io.github.tiderule.rules.fact.observation.ProgesteroneBand;
import io.github.tiderule.rules.fact.observation.Radiograph;
import io.github.tiderule.rules.fact.observation.Sign;
import io.github.tiderule.rules.fact.observation.Smear;
import io.github.tiderule.rules.fact.observation.Vaginoscopy;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;

/** Gives ids to observations that came without one, in the order they came. */
final class ObservationNames {

  private static final Map<Class<? extends Observation>, String> LETTERS =
      Map.ofEntries(
          entry(Progesterone.class, "p"),
          entry(ProgesteroneBand.class, "k"),
          entry(LhTest.class, "l"),
          entry(Smear.class, "c"),
          entry(Vaginoscopy.class, "v"),
          entry(Sign.class, "s"),
          entry(OvaryScan.class, "u"),
          entry(BreedingDone.class, "m"),
          entry(PregnancyScan.class, "w"),
          entry(Radiograph.class, "x"),
          entry(BodyTemperature.class, "t"));

  private final Set<String> taken = new HashSet<>();

  private ObservationNames() {}

  /** The same observations, each with an id; one that is null, or has a null id, stays. */
  static List<Observation> named(List<Observation> observations) {
    ObservationNames names = new ObservationNames();
    for (Observation one : observations) {
      if (one != null) {
        names.taken.add(one.id());
      }
    }
    List<Observation> named = new ArrayList<>(observations);
    named.replaceAll(names::name);
    return named;
  }

  private Observation name(Observation one) {
    return one == null || !Observation.UNNAMED.equals(one.id()) ? one : one.withId(free(one));
  }

  private String free(Observation one) {
    String letter = LETTERS.get(one.getClass());
    return IntStream.iterate(1, number -> number + 1)
        .mapToObj(number -> letter + number)
        .filter(taken::add)
        .findFirst()
        .orElseThrow();
  }
}
