package io.github.tiderule.api.report;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A part of a report, before it is laid out, so that every door says the same in its own form.
 *
 * @param heading as it is written in the report's source, not in capitals
 */
public record Section(String heading, List<Line> lines) {

  /** Which days and when, and what to do for it. */
  public static final String PLAN = "The plan";

  /** When she ovulates, and how closely that is known. */
  public static final String HOW_SURE = "How sure";

  /** What to test next, and when to ask again. */
  public static final String NEXT_TEST = "Next test";

  /** Results that are not taken as reported. */
  public static final String TAKEN = "How her results are taken";

  /** When she would whelp. */
  public static final String WHELPING = "Whelping, if she conceives";

  /** Values at which the plan would be another. */
  public static final String WOULD_CHANGE = "What would change this";

  /** What moved the estimate most. */
  public static final String WEIGHTS = "What moved the estimate";

  /** What schools hold. */
  public static final String DISAGREEMENTS = "Where the trade disagrees";

  public Section {
    lines = List.copyOf(lines);
  }

  /**
   * A paragraph.
   *
   * @param mark what it hangs from, such as a dash, a number or a label; absent where nothing
   */
  public record Line(@Nullable String mark, String words) {}
}
