package io.github.tiderule.rules;

import io.github.tiderule.rules.conclusion.Finding;
import io.github.tiderule.rules.conclusion.reading.Level;
import io.github.tiderule.rules.fact.CandidateDay;
import io.github.tiderule.rules.fact.observation.Observation;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The order in which facts reach a session: by what they are, then by their own words. Writing a
 * fact out costs more than sorting it, so that is done only where nothing shorter tells two apart.
 */
final class FactOrder {

  private static final ClassValue<String> KINDS =
      new ClassValue<>() {
        @Override
        protected String computeValue(Class<?> type) {
          return Observation.class.isAssignableFrom(type)
              ? "Observation "
              : type.getSimpleName() + "[";
        }
      };

  private FactOrder() {}

  /** Facts in an order that does not depend on the one they came in. */
  static List<Object> sorted(Collection<?> facts) {
    List<Keyed> keyed = new ArrayList<>(facts.size());
    for (Object fact : facts) {
      keyed.add(new Keyed(fact));
    }
    keyed.sort(null);
    List<Object> sorted = new ArrayList<>(keyed.size());
    for (Keyed one : keyed) {
      sorted.add(one.fact);
    }
    return sorted;
  }

  /** A fact with what it is sorted by. */
  private static final class Keyed implements Comparable<Keyed> {

    private final Object fact;
    private final String kind;
    private @Nullable String name;
    private @Nullable String words;

    Keyed(Object fact) {
      this.fact = fact;
      kind = KINDS.get(fact.getClass());
    }

    @Override
    public int compareTo(Keyed other) {
      int byKind = kind.compareTo(other.kind);
      if (byKind != 0) {
        return byKind;
      }
      int byName = name().compareTo(other.name());
      return byName != 0 ? byName : words().compareTo(other.words());
    }

    private String name() {
      String known = name;
      if (known == null) {
        known = named();
        name = known;
      }
      return known;
    }

    private String named() {
      if (fact instanceof Observation observation) {
        return observation.id();
      }
      if (fact instanceof Level level) {
        return level.observation();
      }
      if (fact instanceof CandidateDay candidate) {
        return candidate.day().toString();
      }
      if (fact instanceof Finding finding) {
        return finding.kind() + " " + finding.observations();
      }
      return words();
    }

    private String words() {
      String known = words;
      if (known == null) {
        known = fact.toString();
        words = known;
      }
      return known;
    }
  }
}
