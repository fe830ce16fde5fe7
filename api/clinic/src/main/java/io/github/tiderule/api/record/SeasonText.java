package io.github.tiderule.api.record;

import io.github.tiderule.format.cycle.CycleText;
import java.time.Instant;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Puts a cycle file together from what the record holds. */
public final class SeasonText {

  private SeasonText() {}

  /**
   * The season as a cycle file of what people wrote, with the observations as they are now. What is
   * answered is {@link EarlierSeasons#file}, which also knows her earlier seasons.
   */
  public static String of(Instant asOf, Female female, Cycle cycle, List<Entry> current) {
    return CycleText.of(asOf, female.document(), cycle.document(), documents(current));
  }

  /** The texts of entries that have one, in their order. */
  public static List<String> documents(List<Entry> entries) {
    return entries.stream()
        .map(Entry::document)
        .flatMap(Stream::ofNullable)
        .collect(Collectors.toList());
  }
}
