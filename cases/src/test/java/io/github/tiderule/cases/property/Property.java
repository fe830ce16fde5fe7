package io.github.tiderule.cases.property;

import static org.junit.jupiter.api.Assertions.fail;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.Tiderule;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.format.cycle.CycleFile;
import io.github.tiderule.format.cycle.Reading;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * Something that holds for every season. Tried on the seasons of some seeds; a season for which it
 * does not hold is made smaller by dropping observations while it still does not, and printed with
 * its seed. More seeds: {@code -Dtiderule.seeds=500}, other ones: {@code
 * -Dtiderule.firstSeed=1000}.
 */
final class Property {

  static final Tiderule ENGINE = Tiderule.create();
  private static final int USUAL_SEEDS = 20;
  private static final int SEEDS_TO_LOOK_THROUGH = 300;

  private Property() {}

  /** Tries a property; what it returns is what is wrong. */
  static void holds(Function<ObjectNode, Optional<String>> wrong) {
    int seeds = Integer.getInteger("tiderule.seeds", USUAL_SEEDS);
    int first = Integer.getInteger("tiderule.firstSeed", 1);
    List<String> failures = new ArrayList<>();
    for (long seed = first; seed < first + seeds; seed++) {
      ObjectNode cycle = RandomCycle.of(seed);
      if (wrong.apply(cycle).isPresent()) {
        ObjectNode small = smaller(cycle, wrong);
        failures.add(
            "seed " + seed + ": " + wrong.apply(small).orElse("") + "\n  smallest: " + small);
      }
    }
    if (!failures.isEmpty()) {
      fail(failures.size() + " of " + seeds + " seasons\n" + String.join("\n", failures));
    }
  }

  /**
   * Holds that a property known to fail still does, so that its mending is noticed.
   *
   * @param likely a seed for which it was last seen to fail; if it does not any more, others are
   *     looked through
   */
  static void stillFails(long likely, Function<ObjectNode, Optional<String>> wrong) {
    if (wrong.apply(RandomCycle.of(likely)).isPresent()) {
      return;
    }
    for (long seed = 1; seed <= SEEDS_TO_LOOK_THROUGH; seed++) {
      if (wrong.apply(RandomCycle.of(seed)).isPresent()) {
        System.err.println("a property that does not hold yet now fails first for seed " + seed);
        return;
      }
    }
    fail("holds for " + SEEDS_TO_LOOK_THROUGH + " seeds now: move it to PropertiesTest");
  }

  /** The season with every observation dropped that is not needed for the failure. */
  private static ObjectNode smaller(
      ObjectNode cycle, Function<ObjectNode, Optional<String>> wrong) {
    ObjectNode smallest = cycle;
    int at = 0;
    while (at < smallest.get("observations").size()) {
      ObjectNode without = smallest.deepCopy();
      ((ArrayNode) without.get("observations")).remove(at);
      if (wrong.apply(without).isPresent()) {
        smallest = without;
      } else {
        at++;
      }
    }
    return smallest;
  }

  /** The record of a cycle file that is known to be legal. */
  static CycleRecord record(ObjectNode cycle) {
    Reading reading = CycleFile.read(cycle.toString().getBytes(StandardCharsets.UTF_8));
    if (reading instanceof Reading.Read read) {
      return read.cycle();
    }
    throw new AssertionError(reading + " of " + cycle);
  }

  static Advice advise(ObjectNode cycle) {
    return ENGINE.advise(record(cycle));
  }
}
