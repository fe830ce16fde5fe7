package io.github.tiderule.cases.reference;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.format.cycle.CycleFile;
import io.github.tiderule.format.cycle.Reading;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/** One case of {@code cases/reference}: its cycle file and what the reference makes of it. */
record ReferenceCase(String name, JsonNode result) {

  private static final Path HOME = Path.of("reference");

  static List<ReferenceCase> all() {
    List<ReferenceCase> all = new ArrayList<>();
    for (JsonNode result : document().get("cases")) {
      all.add(new ReferenceCase(result.get("case").asText(), result));
    }
    return all;
  }

  /** Names of the cycle files, whether or not the reference has a result for them. */
  static List<String> files() {
    try (var files = Files.list(HOME.resolve("cases"))) {
      return files
          .map(file -> file.getFileName().toString().replace(".json", ""))
          .sorted()
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static JsonNode document() {
    try {
      return new ObjectMapper().readTree(HOME.resolve("results.json").toFile());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * Its cycle file, read as any cycle file is.
   *
   * @throws IllegalStateException if it is refused
   */
  CycleRecord cycle() {
    try {
      Reading reading =
          CycleFile.read(Files.readAllBytes(HOME.resolve("cases").resolve(name + ".json")));
      if (reading instanceof Reading.Read read) {
        return read.cycle();
      }
      throw new IllegalStateException(name + " is refused: " + reading);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** A quantile: of {@code ovulation} or {@code lhPeak}, {@code p05} and so on. */
  Instant quantile(String what, String share) {
    return Instant.parse(result.get(what).get(share).asText());
  }

  double course(String course) {
    return result.get("courses").get(course).asDouble();
  }

  @Override
  public String toString() {
    return name;
  }
}
