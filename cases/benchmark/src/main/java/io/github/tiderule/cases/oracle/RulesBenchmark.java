package io.github.tiderule.cases.oracle;

import io.github.tiderule.rules.RuleBase;
import io.github.tiderule.rules.Stage;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.stream.LongStream;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;

/**
 * All five stages of rules over drawn seasons, and the plain Java that reckons the central ones of
 * those rules. The first tells what all rules say, with what they rest on; the second only whether
 * those few speak.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
public class RulesBenchmark {

  private static final int SEASONS = 64;

  private final RuleBase rules = RuleBase.load();
  private final List<DrawnSeason> seasons =
      LongStream.rangeClosed(1, SEASONS).mapToObj(DrawnSeason::new).toList();
  private int next;

  private DrawnSeason season() {
    next = (next + 1) % SEASONS;
    return seasons.get(next);
  }

  /** How many rules there are. */
  public int rules() {
    return rules.cards().size();
  }

  /** How many of them the plain reckoning knows. */
  public int plainRules() {
    return PlainOracle.of(seasons.get(0), rules.parameters()).size();
  }

  /** The rule engine. */
  @Benchmark
  public int ruleEngine() {
    DrawnSeason season = season();
    return rules.run(Stage.READING, season.forReading()).firings().size()
        + rules.run(Stage.FINDINGS, season.forFindings()).firings().size()
        + rules.run(Stage.DAYS, season.forDays()).firings().size()
        + rules.run(Stage.NEXT, season.forNext()).firings().size()
        + DrawnSeason.CARE.stream()
            .mapToInt(stage -> rules.run(stage, season.forCare()).firings().size())
            .sum();
  }

  /** The plain reckoning. */
  @Benchmark
  public Map<String, Set<String>> plainJava() {
    return PlainOracle.of(season(), rules.parameters());
  }
}
