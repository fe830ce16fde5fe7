package io.github.tiderule.cases.contradiction;

import static org.junit.jupiter.api.Assertions.fail;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * No answer contradicts itself, over the corpus, the demonstrations, the cohorts, odd and random
 * seasons.
 */
class ContradictionsTest {

  private static final int SHOWN = 8;

  private static List<Tried> tried = List.of();

  @BeforeAll
  static void ask() {
    tried = Tried.all();
  }

  @ParameterizedTest
  @EnumSource(Contradiction.class)
  void noAnswerContradictsItself(Contradiction contradiction) {
    List<String> found = tried.stream().flatMap(one -> in(contradiction, one).stream()).toList();
    if (!found.isEmpty()) {
      fail(
          found.size()
              + " of "
              + tried.size()
              + " answers\n"
              + found.stream().limit(SHOWN).collect(Collectors.joining("\n")));
    }
  }

  private static Optional<String> in(Contradiction contradiction, Tried one) {
    return contradiction.in(one.cycle(), one.advice()).map(what -> one.name() + ": " + what);
  }
}
