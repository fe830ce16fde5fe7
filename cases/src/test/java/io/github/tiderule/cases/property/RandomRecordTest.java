package io.github.tiderule.cases.property;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.both;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.lessThan;
import static org.hamcrest.Matchers.notNullValue;
import static org.junit.jupiter.api.Assertions.fail;

import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.CycleRefused;
import org.junit.jupiter.api.Test;

/**
 * Records that programs build from whatever they have, sense or nonsense: each is refused with its
 * fields' names, or answered. More seeds: {@code -Dtiderule.seeds=2000}.
 */
class RandomRecordTest {

  private static final int USUAL_SEEDS = 150;

  @Test
  void whatCanBeBuiltIsAnsweredAndTheRestRefused() {
    int seeds = Integer.getInteger("tiderule.seeds", USUAL_SEEDS);
    int answered = 0;
    for (int seed = 1; seed <= seeds; seed++) {
      try {
        CycleRecord cycle = RandomRecord.of(seed).build();
        answered++;
        assertThat(Property.ENGINE.advise(cycle).action().headline(), notNullValue());
      } catch (CycleRefused e) {
        assertThat(e.violations().size(), greaterThan(0));
      } catch (RuntimeException e) {
        fail("seed " + seed + ": " + e, e);
      }
    }
    assertThat(answered, both(greaterThan(seeds / 4)).and(lessThan(seeds)));
  }
}
