package io.github.tiderule.rules;

import java.util.List;

/**
 * The rules of one concern: one rule file.
 *
 * @param file the file's name without {@code .drl}, such as {@code findings/base}
 * @param title what the file is about, in a sentence without its full stop
 * @param cards by id
 */
public record Concern(Chapter chapter, String file, String title, List<RuleCard> cards) {

  public Concern {
    cards = List.copyOf(cards);
  }
}
