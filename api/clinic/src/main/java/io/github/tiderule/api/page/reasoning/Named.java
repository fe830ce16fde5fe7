package io.github.tiderule.api.page.reasoning;

import io.github.tiderule.api.report.text.Telling;
import java.util.List;

/**
 * An observation that something rests on.
 *
 * @param words what people call it
 */
public record Named(String id, String words) {

  static Named of(String observation, Telling telling) {
    return new Named(observation, telling.observation(observation));
  }

  static List<Named> all(List<String> observations, Telling telling) {
    return observations.stream().map(one -> of(one, telling)).toList();
  }
}
