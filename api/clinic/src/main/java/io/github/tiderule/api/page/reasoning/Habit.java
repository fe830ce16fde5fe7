package io.github.tiderule.api.page.reasoning;

import java.time.LocalDate;
import java.util.List;

/**
 * What one rule of thumb makes of a season.
 *
 * @param kind which one; names the text that says what it goes by
 * @param from what it counts from: a day as on the wire, or the id of an observation; empty where
 *     it says nothing
 * @param note names the text that limits it; empty where there is none
 * @param days none where it says nothing
 */
record Habit(String kind, String from, String note, List<LocalDate> days) {

  Habit {
    days = List.copyOf(days);
  }
}
