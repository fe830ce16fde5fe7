package io.github.tiderule.format.cycle;

import io.github.tiderule.rules.fact.Worded;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** The kinds of observations, and the fields each has beside id, kind and at. */
enum Kind implements Worded {
  PROGESTERONE(
      "progesterone",
      "reportedAt value comparator unit method laboratory specimen tube handling asReported"),
  PROGESTERONE_BAND("progesterone-band", "low high unit"),
  LH("lh", "result"),
  CYTOLOGY("cytology", "cornifiedPercent neutrophils"),
  VAGINOSCOPY("vaginoscopy", "folds"),
  SIGN("sign", "sign present reason"),
  ULTRASOUND("ultrasound", "finding"),
  BREEDING("breeding", "semen route sire note"),
  SCAN("scan", "finding innerChorionicCavityMm biparietalMm fetuses"),
  RADIOGRAPH("radiograph", "fetuses skeletonSeen"),
  TEMPERATURE("temperature", "celsius");

  private final String word;
  private final String fields;

  Kind(String word, String fields) {
    this.word = word;
    this.fields = fields;
  }

  @Override
  public String word() {
    return word;
  }

  private boolean has(String field) {
    return List.of(fields.split(" ")).contains(field);
  }

  /** Whether a field belongs to any kind. */
  static boolean anyHas(String field) {
    return Arrays.stream(values()).anyMatch(kind -> kind.has(field));
  }

  /** A hint for a field that stands in an observation of this kind but belongs to another. */
  Optional<String> elsewhere(String field) {
    String owners =
        Arrays.stream(values())
            .filter(kind -> kind.has(field))
            .map(Kind::word)
            .collect(Collectors.joining(" and "));
    return owners.isEmpty()
        ? Optional.empty()
        : Optional.of(
            "Maybe the kind is a slip? \""
                + field
                + "\" belongs to "
                + owners
                + ", not "
                + word
                + ".");
  }
}
