package io.github.tiderule.api.calendar;

import java.util.ArrayList;
import java.util.List;

/**
 * What becomes of a calendar by one advice after the other.
 *
 * <p>Of each kind, the entries not yet past when an advice is given take up what it plans, in
 * order; what it plans beyond them is new, and those it has no use for are cancelled. What is past
 * stays as it was planned. So an entry keeps its ordinal when it moves, and with it its UID.
 */
final class CalendarHistory {

  private CalendarHistory() {}

  /** The entries after all the advice, by kind and ordinal, the cancelled ones among them. */
  static List<CalendarEntry> entries(List<AdvisedDates> advice) {
    List<CalendarEntry> all = new ArrayList<>();
    for (EntryKind kind : EntryKind.values()) {
      List<CalendarEntry> ofKind = new ArrayList<>();
      for (AdvisedDates dates : advice) {
        follow(ofKind, dates, dates.of(kind));
      }
      all.addAll(ofKind);
    }
    return all;
  }

  private static void follow(
      List<CalendarEntry> entries, AdvisedDates dates, List<Planned> planned) {
    int next = 0;
    for (int i = 0; i < entries.size(); i++) {
      CalendarEntry entry = entries.get(i);
      if (entry.planned().isPast(dates.asOf())) {
        continue;
      }
      boolean wanted = next < planned.size();
      entries.set(
          i,
          wanted ? entry.replaced(planned.get(next), dates.asOf()) : entry.dropped(dates.asOf()));
      next++;
    }
    for (; next < planned.size(); next++) {
      entries.add(new CalendarEntry(entries.size() + 1, planned.get(next), 0, false, dates.asOf()));
    }
  }
}
