package io.github.tiderule.cases.pairs;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.is;

import io.github.tiderule.engine.Tiderule;
import io.github.tiderule.rules.source.Sources;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/**
 * The same blood by two methods is dated alike, or the set stands as missed with its reason. One
 * that begins to be held, or ceases to be, fails here.
 */
class PairedSetsTest {

  private static final List<PairedSet> SETS = PairedSet.read(Path.of("published", "pairs.csv"));
  private static final Tiderule ENGINE = Tiderule.create();
  private static final int COUNT = 60;

  @TestFactory
  Stream<DynamicTest> everySetIsAsItsRowSays() {
    return SETS.stream().map(set -> DynamicTest.dynamicTest(set.name(), () -> check(set)));
  }

  private static void check(PairedSet set) {
    PairedScore score = PairedScore.of(ENGINE, set, 3, COUNT);
    assertThat(score.toString(), score.held() ? "held" : "missed", equalTo(set.status()));
    assertThat(set.source(), Sources.load().contains(set.source()), is(true));
    if (!score.held()) {
      assertThat("why it is missed", set.note().length(), greaterThan(10));
    }
  }
}
