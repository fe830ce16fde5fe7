package io.github.tiderule.engine.advice.reasoning;

import java.util.List;

/**
 * Steps that the engine computes rather than rules conclude, named so that a trace can cite them.
 */
@SuppressWarnings("ImmutableEnumChecker") // the lists are made by List.of
public enum EngineStep {
  TIMELINE(
      "EST-001",
      "Ovulation is estimated from all accepted evidence at once",
      List.of("concannon-1977", "wildt-1978", "hollinshead-2019", "working-value")),
  EGG_SHARE(
      "EST-002",
      "Each half-day's egg share is computed over where ovulation may lie",
      List.of("reynaud-2005", "tsutsui-2009", "doak-1967", "working-value")),
  PLAN(
      "EST-003",
      "Every allowed set of doses is tried and the one that meets most eggs is taken",
      List.of("working-value")),
  TEST_VALUE(
      "EST-004",
      "What the next result could change is weighed over all it may be",
      List.of("working-value")),
  DEADLINE(
      "EST-006",
      "The last safe time to order, book or leave is counted back from the plan",
      List.of("common-practice", "working-value")),
  WHELPING(
      "EST-005",
      "Whelping is counted from ovulation, never from a mating",
      List.of("mir-2011", "decramer-2017", "eilts-2005", "tsutsui-2009", "working-value"));

  private final String id;
  private final String title;
  private final List<String> sources;

  EngineStep(String id, String title, List<String> sources) {
    this.id = id;
    this.title = title;
    this.sources = sources;
  }

  /** The step's name in a trace. */
  public String id() {
    return id;
  }

  public String title() {
    return title;
  }

  /** Keys of the source list. */
  public List<String> sources() {
    return sources;
  }
}
