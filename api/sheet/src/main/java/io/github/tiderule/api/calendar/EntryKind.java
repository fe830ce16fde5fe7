package io.github.tiderule.api.calendar;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/**
 * What stands in a calendar. One more kind is a constant here and a line in {@link AdvisedDates}
 * that says which part of the advice it comes from.
 */
public enum EntryKind {
  /** A test to draw. */
  TEST("test", false),
  /** A window to breed in. */
  BREEDING("breeding", false),
  /** The last hour in which to order. */
  ORDER("order", false),
  /** The last hour in which to book the clinic. */
  BOOKING("book", false),
  /** The last hour in which to leave for the stud or the clinic. */
  LEAVING("leave", false),
  /** The days in which she ovulates, nine times in ten. */
  OVULATION("ovulation", true),
  /** The days in which she would whelp, nine times in ten. */
  WHELPING("whelping", true),
  /** The days in which something of a pregnancy is due. */
  MILESTONE("milestone", true);

  private static final Set<EntryKind> DEADLINES = EnumSet.of(ORDER, BOOKING, LEAVING);

  /** A day before what needs a courier, a clinic or a journey, and again when it presses. */
  private static final List<Integer> BEFORE_A_DEADLINE = List.of(24, 2);

  /** The evening before a blood sample of the morning. */
  private static final List<Integer> BEFORE_A_TEST = List.of(12);

  private final String word;
  private final boolean estimate;

  EntryKind(String word, boolean estimate) {
    this.word = word;
    this.estimate = estimate;
  }

  /** Its part of an entry's UID; never changed. */
  public String word() {
    return word;
  }

  /** Whether it has to be done by its end, and not from its beginning on. */
  public boolean isDeadline() {
    return DEADLINES.contains(this);
  }

  /** How many hours before it begins a calendar calls it to mind. */
  List<Integer> callHours() {
    return isDeadline() ? BEFORE_A_DEADLINE : this == TEST ? BEFORE_A_TEST : List.of();
  }

  /**
   * Whether it is an estimate, in whole days, of one thing that happens by itself. Such an entry
   * moves also when its days are past; of the others, what is past stays as it was planned.
   */
  public boolean isEstimate() {
    return estimate;
  }
}
