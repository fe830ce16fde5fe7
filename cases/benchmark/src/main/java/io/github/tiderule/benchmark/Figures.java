package io.github.tiderule.benchmark;

import io.github.tiderule.cases.oracle.RulesBenchmark;
import io.github.tiderule.rules.Stage;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;

/** What was measured, as a page. */
record Figures(
    Map<String, Double> warm,
    Map<String, Double> parts,
    Map<String, Commands.Run> commands,
    RulesBenchmark rules,
    Map<String, Pair> posteriors) {

  private static final String WHOLE = "whole";
  private static final Set<String> STAGES =
      Arrays.stream(Stage.values()).map(Stage::word).collect(Collectors.toSet());

  /**
   * What two ways to the same cost, ms.
   *
   * @param ours the engine
   * @param theirs the other
   */
  record Pair(double ours, double theirs) {

    double ratio() {
      return theirs / ours;
    }
  }

  String page() {
    return """
    # How long it takes

    Medians of one run of `mvn -q -DskipTests -Pbenchmark package`, on %d processors, Java %s. What
    other work the machine had is not known here; ratios within a table are worth more than figures.

    ## One warm answer, ten observations, two doses

    | part | ms |
    |---|---|
    %s
    The engine's own account (medians of its flight-recorder events; rules of days and of next tests lie
    within the plan and the next test):

    | part | ms | share |
    |---|---|---|
    %s
    ## Cost and size

    | observations | doses | half-days to breed on | ms |
    |---|---|---|---|
    %s
    ![cost by size](cost.svg)

    ## Rules beside plain Java

    | | ms a season |
    |---|---|
    | rule engine, %d rules, with what each conclusion rests on | %s |
    | plain Java, %d of those rules, only whether they speak | %s |
    | ratio | %s |

    ## Posterior beside the independent one

    %s
    ## Commands, whole processes

    | command | seconds | most memory, MB |
    |---|---|---|
    | `java -jar tiderule.jar advise` | %s | %s |
    | `api/bin/tiderule advise`, classes shared since the first run | %s | %s |
    | `java -jar tiderule.jar batch`, %d cycles | %s (%s cycles a second) | %s |
    """
        .formatted(
            Runtime.getRuntime().availableProcessors(),
            System.getProperty("java.version"),
            warmParts(),
            engineParts(),
            sizes(),
            rules.rules(),
            ms(of("ruleEngine")),
            rules.plainRules(),
            ms(of("plainJava")),
            two(of("ruleEngine") / of("plainJava")),
            reference(),
            two(run("advise").seconds()),
            whole(run("advise").megabytes()),
            two(run("shared").seconds()),
            whole(run("shared").megabytes()),
            Benchmark.batch(),
            two(run("batch").seconds()),
            whole(Benchmark.batch() / run("batch").seconds()),
            whole(run("batch").megabytes()));
  }

  private String warmParts() {
    return row("reading the cycle file", ms(of("reading")))
        + row("the engine", ms(of("engine")))
        + row("writing the Advice", ms(of("writing")));
  }

  private String engineParts() {
    double all = Objects.requireNonNull(parts.get(WHOLE));
    StringBuilder rows = new StringBuilder();
    parts.forEach(
        (what, time) ->
            rows.append(
                row(
                    what.equals(WHOLE) ? "all" : STAGES.contains(what) ? "rules: " + what : what,
                    ms(time),
                    whole(100 * time / all) + " %")));
    return rows.toString();
  }

  private String sizes() {
    StringBuilder rows = new StringBuilder();
    warm.forEach(
        (size, time) -> {
          String[] sizes = size.split("/", -1);
          if (sizes.length == 3) {
            rows.append(row(sizes[0], sizes[1], sizes[2].equals("0") ? "all" : sizes[2], ms(time)));
          }
        });
    return rows.toString();
  }

  private String reference() {
    if (posteriors.isEmpty()) {
      return "Not measured: Debian's python3-scipy is not here.\n";
    }
    List<Double> ratios = posteriors.values().stream().map(Pair::ratio).toList();
    return """
    Over %d cases of `cases/reference`, the independent program on the coarsest grid on which it is as near to
    the finest as the engine is held to be (`cases/reference/cost.py`; Python with numpy, so the ratio is of
    programs, not of methods alone): the engine takes %s ms, the other %s ms, medians; the other takes %s
    times as long in the median, %s to %s times in all.
    """
        .formatted(
            posteriors.size(),
            ms(Medians.of(posteriors.values().stream().map(Pair::ours).toList())),
            ms(Medians.of(posteriors.values().stream().map(Pair::theirs).toList())),
            two(Medians.of(ratios)),
            two(ratios.stream().mapToDouble(r -> r).min().orElseThrow()),
            two(ratios.stream().mapToDouble(r -> r).max().orElseThrow()));
  }

  private double of(String name) {
    return Objects.requireNonNull(warm.get(name), name);
  }

  private Commands.Run run(String name) {
    return Objects.requireNonNull(commands.get(name), name);
  }

  private static String row(String... cells) {
    return "| " + String.join(" | ", cells) + " |\n";
  }

  private static String ms(double value) {
    return String.format(Locale.ROOT, "%.3f", value);
  }

  private static String two(double value) {
    return String.format(Locale.ROOT, "%.2f", value);
  }

  private static String whole(double value) {
    return String.format(Locale.ROOT, "%.0f", value);
  }
}
