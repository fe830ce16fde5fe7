package io.github.tiderule.cases.cohort;

import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.format.json.Document;
import io.github.tiderule.format.json.Layout;
import io.github.tiderule.rules.fact.FirstBlood;
import io.github.tiderule.rules.fact.observation.Observation;
import io.github.tiderule.rules.fact.observation.Progesterone;
import io.github.tiderule.rules.fact.observation.Smear;
import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Writes invented seasons as cycle files, one a line: {@code CohortCycles FILE [SEASONS [SEED]]}.
 *
 * <p>The habits of the cohort report take turns, and so do a natural mating, chilled semen and one
 * frozen dose.
 */
public final class CohortCycles {

  private static final int DECIMALS = 2;
  private static final List<String> BREEDINGS =
      List.of(
          "{\"semen\":\"natural\",\"route\":\"natural\"}",
          "{\"semen\":\"chilled\",\"route\":\"vaginal\",\"doses\":2,\"hoursBetween\":24}",
          "{\"semen\":\"frozen\",\"route\":\"transcervical\",\"doses\":1}");

  private CohortCycles() {}

  /**
   * Writes the file.
   *
   * @param args the file; seasons, by default 1000; seed, by default 1
   * @throws IOException if it cannot be written
   */
  public static void main(String[] args) throws IOException {
    int count = args.length > 1 ? Integer.parseInt(args[1]) : 1000;
    long seed = args.length > 2 ? Long.parseLong(args[2]) : 1;
    try (BufferedWriter out = Files.newBufferedWriter(Path.of(args[0]), StandardCharsets.UTF_8)) {
      for (String line : lines(count, seed)) {
        out.write(line);
      }
    }
  }

  /**
   * Cycle files, each on a line with its line feed.
   *
   * @param count how many
   */
  public static List<String> lines(int count, long seed) {
    List<SamplingHabit> habits = CohortReport.habits();
    return IntStream.iterate(0, number -> number + 1)
        .mapToObj(
            number ->
                habits
                    .get(number % habits.size())
                    .sample(Bitches.draw(seed, number), Draws.of(seed + 1, number)))
        .flatMap(Optional::stream)
        .limit(count)
        .map(CohortCycles::line)
        .toList();
  }

  /** The season as a cycle file on one line, with its line feed. */
  static String line(Season season) {
    CycleRecord cycle = season.cycle();
    int number = season.bitch().number();
    return Document.text(
        Layout.ONE_LINE,
        json ->
            json.text("schema", "tiderule/cycle/1")
                .instant("asOf", time(cycle.asOf()))
                .text("zone", Calendar.ZONE.getId())
                .object("female", number, id -> json.text("id", "invented-" + id))
                .object("firstBlood", cycle.firstBlood(), blood -> firstBlood(json, blood))
                .objects("observations", season.observations(), o -> observation(json, o))
                .raw("breeding", BREEDINGS.get(number % BREEDINGS.size())));
  }

  private static void firstBlood(Document json, FirstBlood blood) {
    if (blood.on() != null) {
      json.day("on", blood.on());
    }
    json.word("certainty", blood.certainty());
  }

  private static void observation(Document json, Observation observation) {
    json.text("id", observation.id()).instant("at", time(observation.at()));
    if (observation instanceof Progesterone p && p.statedUnit() != null) {
      json.text("kind", "progesterone")
          .figure("value", p.value(), DECIMALS)
          .word("unit", p.statedUnit())
          .word("method", p.method())
          .text("laboratory", p.laboratory());
      if (p.comparator() != null) {
        json.word("comparator", p.comparator());
      }
    } else if (observation instanceof Smear smear && smear.neutrophils() != null) {
      json.text("kind", "cytology")
          .figure("cornifiedPercent", smear.cornifiedPercent(), 0)
          .word("neutrophils", smear.neutrophils());
    } else {
      throw new IllegalStateException("a habit observes no " + observation);
    }
  }

  private static OffsetDateTime time(Instant at) {
    return at.atZone(Calendar.ZONE).toOffsetDateTime();
  }
}
