package io.github.tiderule.cases.corpus;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;

/**
 * One case.
 *
 * @param name topic and folder, as in {@code dating/0003-slow-riser}
 */
public record CaseFolder(Path path, String name) {

  /** Cases whose expectation is known not to hold yet. */
  public static final String OPEN = "open";

  /** Cases about which sources conflict. */
  public static final String DISPUTED = "disputed";

  /** The part of the name before the slash. */
  public String topic() {
    return name.substring(0, name.indexOf('/'));
  }

  /** Whether the expectation is known not to hold yet. */
  public boolean open() {
    return topic().equals(OPEN);
  }

  /**
   * The cycle file, as bytes.
   *
   * @throws UncheckedIOException if it cannot be read
   */
  public byte[] cycle() {
    try {
      return Files.readAllBytes(path.resolve("cycle.json"));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Parameters that a clinic of its own moves, by id; empty for the usual ones. */
  public Map<String, Double> protocol() {
    Map<String, Double> moved = new TreeMap<>();
    expectation()
        .path("protocol")
        .properties()
        .forEach(field -> moved.put(field.getKey(), field.getValue().doubleValue()));
    return moved;
  }

  /**
   * What is expected, as written.
   *
   * @throws UncheckedIOException if it cannot be read or is not YAML
   */
  public JsonNode expectation() {
    return Yaml.read(path.resolve("expect.yaml"));
  }
}
