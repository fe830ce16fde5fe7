package io.github.tiderule.cases.corpus;

import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;

/** Reads YAML and JSON strictly: a key twice, or text after the end, is an error. */
final class Yaml {

  private static final YAMLMapper YAML =
      YAMLMapper.builder(
              YAMLFactory.builder().enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION).build())
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .build();
  private static final JsonMapper JSON =
      JsonMapper.builder()
          .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .build();

  private Yaml() {}

  /**
   * Reads one YAML file.
   *
   * @throws UncheckedIOException with the file's name if it cannot be read
   */
  static JsonNode read(Path file) {
    try {
      return YAML.readTree(file.toFile());
    } catch (IOException e) {
      throw new UncheckedIOException(file + ": " + e.getMessage(), e);
    }
  }

  /**
   * Reads some JSON.
   *
   * @throws UncheckedIOException if it is none
   */
  static JsonNode json(byte[] utf8) {
    try {
      return JSON.readTree(utf8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
