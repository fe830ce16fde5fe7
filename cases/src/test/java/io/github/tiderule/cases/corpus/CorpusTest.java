package io.github.tiderule.cases.corpus;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.greaterThanOrEqualTo;
import static org.junit.jupiter.api.Assertions.fail;

import io.github.tiderule.engine.Tiderule;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Every case of the corpus, through the reader and the engine. */
class CorpusTest {

  private static final Path ROOT = Path.of("").toAbsolutePath();
  private static final List<CaseFolder> CASES = Corpus.under(ROOT);

  @TestFactory
  Stream<DynamicTest> everyCaseHolds() {
    Judge judge = Judge.of(Answers.of(Tiderule.create()), ROOT);
    return CASES.stream()
        .map(
            folder ->
                DynamicTest.dynamicTest(
                    folder.name(), folder.path().toUri(), () -> run(judge, folder)));
  }

  private static void run(Judge judge, CaseFolder folder) {
    CaseResult result = judge.judge(folder);
    if (folder.open() && result.holds()) {
      fail(folder.name() + " is among the open cases but holds now: move it to its topic");
    }
    if (!folder.open() && !result.holds()) {
      fail("\n" + result.words());
    }
  }

  @Test
  void thereAreManyCases() {
    assertThat((int) CASES.stream().filter(one -> !one.open()).count(), greaterThanOrEqualTo(150));
  }
}
