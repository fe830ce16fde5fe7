package io.github.tiderule.rules;

import io.github.tiderule.rules.fact.assay.Method;
import io.github.tiderule.rules.fact.assay.Series;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** The words of one fact in a test line: by place, or by {@code key=value}. */
final class Words {

  private final String text;
  private final String[] words;

  Words(String text) {
    this.text = text;
    this.words = text.split("\\s+", -1);
  }

  String get(int place) {
    if (place >= words.length) {
      throw new IllegalArgumentException("word " + place + " is missing in: " + text);
    }
    return words[place];
  }

  double number(int place) {
    return Double.parseDouble(get(place));
  }

  /** The number at a place, or nothing for a dash. */
  @Nullable Double maybe(int place) {
    return get(place).equals("-") ? null : Double.valueOf(get(place));
  }

  /** Ids separated by commas, or none for a dash or a missing word. */
  List<String> ids(int place) {
    return place >= words.length || words[place].equals("-")
        ? List.of()
        : List.of(words[place].split(",", -1));
  }

  boolean has(String word) {
    return Arrays.asList(words).contains(word);
  }

  @Nullable String key(String key) {
    return Arrays.stream(words)
        .filter(word -> word.startsWith(key + "="))
        .map(word -> word.substring(key.length() + 1))
        .findFirst()
        .orElse(null);
  }

  @Nullable Double keyNumber(String key) {
    @Nullable String value = key(key);
    return value == null ? null : Double.valueOf(value);
  }

  @Nullable Integer keyCount(String key) {
    @Nullable String value = key(key);
    return value == null ? null : Integer.valueOf(value);
  }

  double keyOr(String key, double otherwise) {
    @Nullable Double value = keyNumber(key);
    return value == null ? otherwise : value;
  }

  double factor() {
    return keyOr("factor", 1);
  }

  /** Laboratory A by radioimmunoassay unless {@code lab} and {@code method} say otherwise. */
  Series series() {
    @Nullable String laboratory = key("lab");
    @Nullable String method = key("method");
    return Series.of(
        laboratory == null ? "A" : laboratory,
        method == null
            ? Method.RIA
            : Method.valueOf(method.toUpperCase(Locale.ROOT).replace('-', '_')));
  }

  @Override
  public String toString() {
    return text;
  }
}
