package io.github.tiderule.cases.corpus;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** Gathers what differs, each under the key it was expected under. */
final class Differences {

  private final List<Difference> found;
  private final int[] checks;
  private final String prefix;

  private Differences(List<Difference> found, int[] checks, String prefix) {
    this.found = found;
    this.checks = checks;
    this.prefix = prefix;
  }

  static Differences none() {
    return new Differences(new ArrayList<>(), new int[1], "");
  }

  /** The same gathering, under a key. */
  Differences under(String key) {
    return new Differences(found, checks, prefix.isEmpty() ? key : prefix + "." + key);
  }

  /** Counts one thing held against the answer, and notes it if it does not hold. */
  void require(boolean holds, String expected, @Nullable Object actual) {
    checks[0]++;
    if (!holds) {
      found.add(new Difference(prefix, expected, Objects.toString(actual, "nothing")));
    }
  }

  List<Difference> found() {
    return found;
  }

  int checks() {
    return checks[0];
  }

  /** Holds every key of an object against the one who knows it. */
  void each(JsonNode object, Outcome.Advised answer, Map<String, Expecting> known) {
    object
        .properties()
        .forEach(
            entry -> {
              Differences here = under(entry.getKey());
              Expecting one = known.get(entry.getKey());
              if (one == null) {
                here.require(false, "a key this runner knows: " + known.keySet(), entry.getKey());
              } else {
                one.check(entry.getValue(), answer, here);
              }
            });
  }
}
