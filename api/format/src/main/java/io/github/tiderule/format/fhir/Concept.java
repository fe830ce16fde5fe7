package io.github.tiderule.format.fhir;

import io.github.tiderule.format.node.Node;
import io.github.tiderule.rules.fact.Worded;
import java.util.LinkedHashSet;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** The words of a CodeableConcept: its text, its codes and what they are displayed as. */
final class Concept {

  private Concept() {}

  static Set<String> words(Node.@Nullable Members concept) {
    Set<String> words = new LinkedHashSet<>();
    if (concept != null) {
      add(words, concept.text("text"));
      for (Node.Members coding : concept.objects("coding")) {
        add(words, coding.text("code"));
        add(words, coding.text("display"));
      }
    }
    return words;
  }

  private static void add(Set<String> words, @Nullable String word) {
    if (word != null && !word.isBlank()) {
      words.add(word.strip());
    }
  }

  /**
   * The constant that one of the words means, if they mean no two.
   *
   * @param codes what else means a constant, in small letters
   */
  static <E extends Enum<E> & Worded> Optional<E> meant(
      Set<String> words, Class<E> type, Map<String, E> codes) {
    Set<E> meant = new LinkedHashSet<>();
    for (String word : words) {
      String plain = word.toLowerCase(Locale.ROOT);
      for (E constant : type.getEnumConstants()) {
        if (constant.word().equals(plain) || constant == codes.get(plain)) {
          meant.add(constant);
        }
      }
    }
    return meant.size() == 1 ? Optional.of(meant.iterator().next()) : Optional.empty();
  }
}
