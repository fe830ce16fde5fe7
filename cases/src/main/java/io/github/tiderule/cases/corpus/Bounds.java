package io.github.tiderule.cases.corpus;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * Reads the bounds of an expectation: local times of the cycle's zone, as {@code 2027-01-11T08:30}
 * or a bare date, which is its first moment as {@code from} and its last as {@code to}; numbers as
 * {@code least} and {@code most}; words alone or in a list.
 */
final class Bounds {

  private Bounds() {}

  /** Holds an instant between {@code from} and {@code to}, either of which may be left out. */
  static void time(
      JsonNode bounds, @Nullable OffsetDateTime actual, ZoneId zone, Differences differences) {
    String words = words(bounds, "from", "to");
    if (actual == null) {
      differences.require(false, words, null);
      return;
    }
    LocalDateTime local = local(actual, zone);
    boolean holds =
        (!bounds.has("from") || !local.isBefore(start(bounds.get("from"))))
            && (!bounds.has("to") || !local.isAfter(end(bounds.get("to"))));
    differences.require(holds, words, local);
  }

  /** Holds a number between {@code least} and {@code most}, either of which may be left out. */
  static void number(JsonNode bounds, double actual, Differences differences) {
    boolean holds =
        (!bounds.has("least") || actual >= bounds.get("least").asDouble())
            && (!bounds.has("most") || actual <= bounds.get("most").asDouble());
    differences.require(
        holds, words(bounds, "least", "most"), String.format(Locale.ROOT, "%.3f", actual));
  }

  /** Whether a number lies below {@code least} or above {@code most}, in words. */
  private static String words(JsonNode bounds, String low, String high) {
    return (bounds.has(low) ? low + " " + bounds.get(low).asText() + " " : "")
        + (bounds.has(high) ? high + " " + bounds.get(high).asText() : "").strip();
  }

  /** One word or a list of words. */
  static List<String> words(JsonNode node) {
    List<String> words = new ArrayList<>();
    if (node.isArray()) {
      node.forEach(word -> words.add(word.asText()));
    } else {
      words.add(node.asText());
    }
    return words;
  }

  /** Whether a node says that there is to be nothing. */
  static boolean none(JsonNode node) {
    return Objects.equals(node.asText(), "none");
  }

  static LocalDateTime start(JsonNode node) {
    String text = node.asText();
    return text.contains("T") ? LocalDateTime.parse(text) : LocalDate.parse(text).atStartOfDay();
  }

  static LocalDateTime end(JsonNode node) {
    String text = node.asText();
    return text.contains("T")
        ? LocalDateTime.parse(text)
        : LocalDate.parse(text).plusDays(1).atStartOfDay();
  }

  static LocalDateTime local(OffsetDateTime at, ZoneId zone) {
    ZonedDateTime zoned = at.atZoneSameInstant(zone);
    return zoned.toLocalDateTime().withNano(0);
  }
}
