package io.github.tiderule.cases.contradiction;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Random;
import org.jspecify.annotations.Nullable;

/**
 * A season as somebody wrote it, with some of it changed: looked at on another day, an observation
 * left out or moved, a value read or typed otherwise, other semen, and news of how it went.
 */
final class Mutated {

  private static final ObjectMapper JSON = new ObjectMapper();
  private static final List<String> SEMEN = List.of("natural", "fresh", "chilled", "frozen");
  private static final int CHANGES = 3;

  private final Random random;
  private final ObjectNode cycle;

  private Mutated(ObjectNode cycle, long seed) {
    this.cycle = cycle;
    random = new Random(seed);
    random.nextInt();
  }

  /** The file with some of it changed; the same for the same seed, and not always a legal one. */
  static byte[] of(byte[] file, long seed) {
    try {
      Mutated one = new Mutated((ObjectNode) JSON.readTree(file), seed);
      int changes = 1 + one.random.nextInt(CHANGES);
      for (int i = 0; i < changes; i++) {
        one.change();
      }
      return one.cycle.toString().getBytes(StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void change() {
    ArrayNode observations = cycle.withArray("observations");
    switch (random.nextInt(8)) {
      case 0, 1 -> cycle.put("asOf", moved(cycle.get("asOf"), 24 * (random.nextInt(40) - 5)));
      case 2 -> {
        if (!observations.isEmpty()) {
          observations.remove(random.nextInt(observations.size()));
        }
      }
      case 3 -> {
        JsonNode one = any(observations);
        if (one instanceof ObjectNode observation) {
          observation.put("at", moved(observation.get("at"), random.nextInt(97) - 48));
        }
      }
      case 4, 5 -> {
        JsonNode one = any(observations);
        if (one instanceof ObjectNode observation && observation.has("value")) {
          double factor = Math.exp(random.nextGaussian());
          observation.put("value", Math.round(100 * factor * one.get("value").asDouble()) / 100.0);
        }
      }
      case 6 -> {
        String semen = SEMEN.get(random.nextInt(SEMEN.size()));
        ObjectNode breeding = cycle.putObject("breeding");
        breeding.put("semen", semen);
        breeding.put("route", semen.equals("natural") ? "natural" : "transcervical");
        breeding.put("doses", 1 + random.nextInt(3));
      }
      default -> news(observations);
    }
  }

  private void news(ArrayNode observations) {
    ObjectNode one = observations.addObject();
    one.put("id", "news-" + observations.size());
    one.put("at", moved(cycle.get("asOf"), -1));
    switch (random.nextInt(4)) {
      case 0 -> one.put("kind", "pregnancy-scan").put("finding", "not-pregnant");
      case 1 -> one.put("kind", "sign").put("sign", "refuses").put("present", true);
      case 2 -> one.put("kind", "cytology").put("cornifiedPercent", 20).put("neutrophils", "many");
      default -> one.put("kind", "breeding").put("semen", "natural").put("route", "natural");
    }
  }

  private @Nullable JsonNode any(ArrayNode observations) {
    return observations.isEmpty() ? null : observations.get(random.nextInt(observations.size()));
  }

  private static String moved(JsonNode moment, int hours) {
    try {
      return OffsetDateTime.parse(moment.asText()).plusHours(hours).toString();
    } catch (DateTimeParseException e) {
      return moment.asText();
    }
  }
}
