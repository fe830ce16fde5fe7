package io.github.tiderule.cases.property;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Random;

/**
 * What a careless program fills in: numbers mostly within their limits, at times at their very
 * edge, and in half of the seasons also beyond.
 */
class CarelessHand {

  private final Random random;
  private final boolean careless;
  private final LocalDate today;

  CarelessHand(long seed, LocalDate earliest) {
    random = new Random(seed);
    random.nextInt();
    careless = random.nextBoolean();
    today = earliest.plusDays(random.nextInt(90));
  }

  final LocalDate today() {
    return today;
  }

  /** A whole number from 0 to less than another. */
  final int below(int many) {
    return random.nextInt(many);
  }

  final <E> E one(List<E> all) {
    return all.get(random.nextInt(all.size()));
  }

  final <E extends Enum<E>> E one(Class<E> type) {
    return one(List.of(type.getEnumConstants()));
  }

  final boolean often() {
    return random.nextInt(10) < 7;
  }

  final boolean slips() {
    return careless && random.nextInt(60) == 0;
  }

  /** A number within its limits, often at one of them; seldom beyond. */
  final double number(double least, double most) {
    if (slips()) {
      return one(List.of(Double.NaN, Double.NEGATIVE_INFINITY, 1e300, least - 1, most + 1));
    }
    return switch (random.nextInt(8)) {
      case 0 -> least;
      case 1 -> most;
      default -> least + (most - least) * Math.pow(random.nextDouble(), 3);
    };
  }

  final int whole(int least, int most) {
    return slips()
        ? one(List.of(least - 1, most + 1, Integer.MIN_VALUE))
        : least + random.nextInt(most - least + 1);
  }

  final String text() {
    return slips() ? one(List.of("", "\u202E", "x".repeat(500))) : one(List.of("A", "B", "Öa 1"));
  }

  final LocalDate past(int back) {
    return slips()
        ? one(List.of(LocalDate.MIN, LocalDate.MAX))
        : today.minusDays(random.nextInt(back));
  }

  final Instant at(LocalDate day) {
    return day.atTime(random.nextInt(24), random.nextInt(60)).atZone(ZoneId.of("UTC")).toInstant();
  }

  final Instant moment() {
    return slips()
        ? one(List.of(Instant.MIN, Instant.MAX, Instant.EPOCH))
        : at(today.minusDays(random.nextInt(40)).plusDays(random.nextInt(3)));
  }

  /** A moment some seconds after another, if there is one. */
  static Instant after(Instant at, double seconds) {
    boolean usual = Math.abs(at.getEpochSecond()) < 1e10 && Math.abs(seconds) < 1e10;
    return usual ? at.plusSeconds((long) seconds) : at;
  }
}
