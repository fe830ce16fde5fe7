package io.github.tiderule.engine;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.is;

import io.github.tiderule.rules.fact.Outcome;
import org.junit.jupiter.api.Test;

/** What is left of a season where one looks back. */
class HindsightTest {

  /** A field that is added and not carried over is missed here. */
  @Test
  void atItsOwnMomentNothingIsLostButWhatCameOfIt() {
    CycleRecord whole = WholeSeason.builder().build();
    assertThat(
        whole.knownAt(whole.asOf()), is(whole.toBuilder().outcome(Outcome.unknown()).build()));
  }
}
