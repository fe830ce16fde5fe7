package io.github.tiderule.cases.property;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Random;

/**
 * An invented season for a seed, as a cycle file: a course of progesterone with noise around it, a
 * few of every other kind of observation, any semen and route, and now and then a slip.
 */
public final class RandomCycle {

  static final ZoneId ZONE = ZoneId.of("UTC");
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final LocalDate FIRST_BLOOD = LocalDate.of(2027, 2, 1);
  private static final List<String> METHODS =
      List.of("ria", "clia", "eclia", "elfa", "feia", "fluorescence", "dry-slide", "unknown");
  private static final List<String> SIGNS =
      List.of("stands", "refuses", "flags", "vulva-softens", "bleeding-stops");
  private static final List<String> FOLDS =
      List.of("swollen", "shrinking", "angular", "rounding", "flat");

  private final Random random;
  private final ObjectNode cycle = JSON.createObjectNode();
  private final ArrayNode observations = JSON.createArrayNode();
  private final double peakDay;
  private final double pace;
  private final double nowDay;

  private RandomCycle(long seed) {
    random = new Random(seed);
    random.nextInt();
    peakDay = 4 + 12 * random.nextDouble();
    pace = 1.3 + 0.7 * random.nextDouble();
    nowDay = Math.max(2, peakDay + random.nextInt(14) - 4);
  }

  /** The season of a seed; the same seed gives the same season. */
  public static ObjectNode of(long seed) {
    RandomCycle one = new RandomCycle(seed);
    one.write();
    return one.cycle;
  }

  private void write() {
    cycle.put("schema", "tiderule/cycle/1");
    cycle.put("asOf", at(nowDay));
    cycle.put("zone", ZONE.getId());
    ObjectNode female = cycle.putObject("female");
    if (random.nextInt(3) > 0) {
      female.put("bornOn", FIRST_BLOOD.minusDays(500 + random.nextInt(2500)).toString());
    }
    ObjectNode blood = cycle.putObject("firstBlood");
    if (random.nextInt(6) == 0) {
      blood.put("certainty", "unknown");
    } else {
      blood.put("on", FIRST_BLOOD.toString());
      blood.put("certainty", random.nextInt(4) == 0 ? "estimated" : "seen");
    }
    progesterone();
    others();
    cycle.set("observations", observations);
    breeding();
  }

  private void progesterone() {
    int laboratories = random.nextInt(4) == 0 ? 2 : 1;
    List<String> method = List.of(one(METHODS), one(METHODS));
    double day = 3 + random.nextInt(5);
    while (day < nowDay && observations.size() < 9) {
      int laboratory = random.nextInt(laboratories);
      double value = level(day) * Math.exp(0.12 * random.nextGaussian());
      ObjectNode sample = add("p", "progesterone", day);
      sample.put("value", Math.max(0.1, Math.round(100 * value) / 100.0));
      sample.put("unit", "ng/mL");
      sample.put("method", method.get(laboratory));
      sample.put("laboratory", laboratory == 0 ? "A" : "B");
      if (random.nextInt(15) == 0) {
        sample.put("comparator", random.nextBoolean() ? "<" : ">");
      }
      if (random.nextInt(15) == 0) {
        sample.put("tube", "gel");
      }
      if (random.nextInt(25) == 0) {
        sample.remove("unit");
      }
      day += 1 + random.nextInt(3);
    }
  }

  /** A plain course: base, then growth by a constant factor from two days before the peak. */
  private double level(double day) {
    double days = day - peakDay;
    return Math.min(40, 0.5 + 1.8 * Math.pow(pace, days));
  }

  private void others() {
    for (int i = random.nextInt(4); i > 0; i--) {
      ObjectNode smear = add("c", "cytology", past());
      smear.put("cornifiedPercent", random.nextInt(101));
      smear.put("neutrophils", one(List.of("none", "few", "many")));
    }
    for (int i = random.nextInt(3); i > 0; i--) {
      add("l", "lh", past()).put("result", random.nextInt(4) == 0 ? "positive" : "negative");
    }
    for (int i = random.nextInt(3); i > 0; i--) {
      add("s", "sign", past()).put("sign", one(SIGNS)).put("present", random.nextInt(4) > 0);
    }
    if (random.nextInt(5) == 0) {
      add("v", "vaginoscopy", past()).put("folds", one(FOLDS));
    }
    if (random.nextInt(8) == 0) {
      add("u", "ultrasound", past()).put("finding", one(List.of("follicles", "ovulated")));
    }
    if (random.nextInt(8) == 0) {
      add("k", "progesterone-band", past()).put("low", 3).put("high", 10).put("unit", "ng/mL");
    }
    if (random.nextInt(6) == 0) {
      add("m", "breeding", past()).put("semen", "natural").put("route", "natural");
    }
  }

  private void breeding() {
    if (random.nextInt(5) == 0) {
      return;
    }
    ObjectNode breeding = cycle.putObject("breeding");
    String semen = one(List.of("natural", "fresh", "chilled", "frozen"));
    breeding.put("semen", semen);
    breeding.put(
        "route",
        semen.equals("natural")
            ? "natural"
            : one(List.of("vaginal", "transcervical", "transcervical", "surgical")));
    if (random.nextBoolean()) {
      breeding.put("doses", 1 + random.nextInt(3));
    }
    if (semen.equals("chilled") && random.nextBoolean()) {
      breeding.putObject("order").put("cutOff", "14:00").put("transitHours", 20);
    }
  }

  private double past() {
    return 1 + (nowDay - 1) * random.nextDouble();
  }

  private ObjectNode add(String letter, String kind, double day) {
    ObjectNode observation = observations.addObject();
    observation.put("id", letter + observations.size());
    observation.put("kind", kind);
    observation.put("at", at(day));
    return observation;
  }

  private String at(double day) {
    ZonedDateTime noon = FIRST_BLOOD.atTime(12, 0).atZone(ZONE);
    return noon.plusMinutes(Math.round(day * 24 * 60)).toInstant().toString();
  }

  private String one(List<String> words) {
    return words.get(random.nextInt(words.size()));
  }
}
