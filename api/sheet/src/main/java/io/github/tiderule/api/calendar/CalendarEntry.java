package io.github.tiderule.api.calendar;

import java.time.OffsetDateTime;

/**
 * One entry of a calendar.
 *
 * @param ordinal counts the entries of its kind in a season, from 1
 * @param planned what stands there now, or stood there last
 * @param sequence how often it was moved, cancelled or taken up again, from 0
 * @param cancelled whether it no longer is to happen
 * @param changedAt the moment of the advice that changed it last
 */
record CalendarEntry(
    int ordinal, Planned planned, int sequence, boolean cancelled, OffsetDateTime changedAt) {

  /** The entry after an advice that plans this instead. */
  CalendarEntry replaced(Planned now, OffsetDateTime at) {
    boolean moved = cancelled || planned.differs(now);
    return new CalendarEntry(
        ordinal,
        now,
        moved ? sequence + 1 : sequence,
        false,
        moved || !planned.equals(now) ? at : changedAt);
  }

  /** The entry after an advice that no longer plans it. */
  CalendarEntry dropped(OffsetDateTime at) {
    return cancelled ? this : new CalendarEntry(ordinal, planned, sequence + 1, true, at);
  }
}
