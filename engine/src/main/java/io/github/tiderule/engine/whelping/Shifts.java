package io.github.tiderule.engine.whelping;

import io.github.tiderule.rules.parameter.Parameters;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** What makes a pregnancy longer or shorter than usual. */
final class Shifts {

  /** Words that name a breed of which a mean was published. */
  private static final Map<String, String> BREEDS =
      new TreeMap<>(
          Map.of(
              "labrador", "whelping.breed.labrador-retriever",
              "german shepherd", "whelping.breed.german-shepherd",
              "golden retriever", "whelping.breed.golden-retriever"));

  private final Parameters parameters;

  Shifts(Parameters parameters) {
    this.parameters = parameters;
  }

  /** Days by which the number of pups shifts whelping; 0 where nobody counted. */
  double litter(@Nullable Integer pups) {
    if (pups == null || pups < 1) {
      return 0;
    }
    double longer = parameters.value("whelping.litter.longer");
    double small = parameters.value("whelping.litter.small-share");
    return pups <= parameters.value("whelping.litter.small")
        ? longer * (1 - small)
        : -longer * small;
  }

  /** Days by which the breed shifts whelping; 0 where none was published or it is a cross. */
  double breed(@Nullable String breed) {
    if (breed == null) {
      return 0;
    }
    String plain = breed.toLowerCase(Locale.ROOT).replace('-', ' ');
    if (plain.matches(".*(\\bx\\b|cross|mix|doodle|/).*")) {
      return 0;
    }
    return BREEDS.entrySet().stream()
        .filter(entry -> plain.contains(entry.getKey()))
        .mapToDouble(entry -> parameters.value(entry.getValue()))
        .findFirst()
        .orElse(0);
  }

  /** Days by which a first breeding so many days after ovulation delays whelping. */
  double late(double daysAfterOvulation) {
    return Math.min(
        parameters.value("whelping.late.most"),
        Math.max(0, daysAfterOvulation - parameters.value("whelping.late.from")));
  }
}
