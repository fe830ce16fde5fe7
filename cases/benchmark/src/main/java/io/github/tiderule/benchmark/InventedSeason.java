package io.github.tiderule.benchmark;

import java.nio.charset.StandardCharsets;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** Cycle files of an invented bitch, as large as is wanted. */
final class InventedSeason {

  private static final OffsetDateTime FIRST_BLOOD =
      OffsetDateTime.of(2027, 2, 21, 8, 0, 0, 0, ZoneOffset.ofHours(1));

  private static final double DAYS_SEEN = 12;

  private InventedSeason() {}

  /**
   * A season.
   *
   * @param observations how many, from none; progesterone, LH, smears, folds and signs in turn
   * @param doses of fresh semen, from 1
   * @param halfDays on how many half-days she may be bred; all where it is 0
   */
  static byte[] of(int observations, int doses, int halfDays) {
    String windows =
        halfDays == 0
            ? ""
            : ", \"available\": ["
                + available(halfDays).stream().collect(Collectors.joining(", "))
                + "]";
    String text =
        """
        {"schema": "tiderule/cycle/1", "asOf": "%s", "zone": "Europe/Vienna",
         "female": {"id": "heather", "name": "Heather (invented)", "breed": "Whippet", "bodyMassKg": 13},
         "firstBlood": {"on": "2027-02-21", "certainty": "seen"},
         "observations": [%s],
         "breeding": {"semen": "fresh", "route": "vaginal", "doses": %d, "hoursBetween": 24%s},
         "laboratory": {"turnaroundHours": 8}}
        """
            .formatted(
                written(FIRST_BLOOD.plusHours(Math.round(24 * DAYS_SEEN) + 9)),
                String.join(", ", seen(observations)),
                doses,
                windows);
    return text.getBytes(StandardCharsets.UTF_8);
  }

  private static List<String> seen(int count) {
    List<String> seen = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      double day = DAYS_SEEN * (i + 1) / count;
      OffsetDateTime at =
          FIRST_BLOOD.plusMinutes(Math.round(day * 1440)).truncatedTo(ChronoUnit.MINUTES);
      String start = "{\"id\": \"o%d\", \"at\": \"%s\", ".formatted(i, written(at));
      seen.add(start + what(i, day) + "}");
    }
    return seen;
  }

  private static String what(int i, double day) {
    return switch (i % 5) {
      case 0, 2 ->
          String.format(
              Locale.ROOT,
              "\"kind\": \"progesterone\", \"value\": %.2f, \"unit\": \"ng/mL\", \"method\": \"clia\","
                  + " \"laboratory\": \"north\"",
              0.4 + 6 / (1 + Math.exp(-(day - 11) * 0.9)));
      case 1 ->
          "\"kind\": \"cytology\", \"cornifiedPercent\": %d, \"neutrophils\": \"none\""
              .formatted(Math.round(30 + 60 / (1 + Math.exp(6 - day))));
      case 3 ->
          "\"kind\": \"lh\", \"result\": \"%s\""
              .formatted(day > 9.2 && day < 10.4 ? "positive" : "negative");
      default ->
          "\"kind\": \"sign\", \"sign\": \"%s\", \"present\": true"
              .formatted(day < 8 ? "refuses" : "flags");
    };
  }

  private static List<String> available(int halfDays) {
    List<String> windows = new ArrayList<>();
    for (int i = 0; i < halfDays; i++) {
      OffsetDateTime from = FIRST_BLOOD.plusDays(13).plusHours(12L * i);
      windows.add(
          "{\"from\": \"%s\", \"to\": \"%s\"}"
              .formatted(written(from), written(from.plusHours(4))));
    }
    return windows;
  }

  /** As a cycle file wants it, with seconds. */
  private static String written(OffsetDateTime at) {
    return DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(at);
  }
}
