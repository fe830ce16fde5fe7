package io.github.tiderule.cases.difference;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;

/** What differs between two answers to one cycle, by what a breeder or a vet would notice. */
final class Changes {

  private static final Map<String, Function<Tree, Set<String>>> LOOKED_AT = new LinkedHashMap<>();

  static {
    LOOKED_AT.put("refusal", answer -> each(answer.at("problems"), "path", "code"));
    LOOKED_AT.put("action", answer -> words(answer.at("action").at("now")));
    LOOKED_AT.put("plan", answer -> words(answer.at("plan").at("at")));
    LOOKED_AT.put("ovulation median", answer -> words(answer.at("ovulation").at("median")));
    LOOKED_AT.put("next test", answer -> words(answer.at("nextTest").at("at")));
    LOOKED_AT.put("questions", answer -> each(answer.at("questions"), "about", "text"));
    LOOKED_AT.put("cautions", answer -> each(answer.at("cautions"), "rule", "level"));
    LOOKED_AT.put("rules fired", answer -> each(answer.at("trace"), "rule"));
  }

  private Changes() {}

  /** One line for each thing that differs; none where nothing does. */
  static List<String> between(Tree before, Tree after) {
    List<String> changes = new ArrayList<>();
    LOOKED_AT.forEach(
        (what, of) -> {
          Set<String> gone = of.apply(before);
          Set<String> come = of.apply(after);
          Set<String> both = new TreeSet<>(gone);
          both.retainAll(come);
          gone.removeAll(both);
          come.removeAll(both);
          if (!gone.isEmpty() || !come.isEmpty()) {
            changes.add(what + ": " + list(gone) + " -> " + list(come));
          }
        });
    return changes;
  }

  private static String list(Set<String> words) {
    return words.isEmpty() ? "nothing" : String.join(", ", words);
  }

  private static Set<String> words(Tree one) {
    Set<String> words = new TreeSet<>();
    if (one.isList()) {
      words.add(one.entries().stream().map(Tree::text).collect(Collectors.joining(" ", "[", "]")));
    } else if (!one.text().isEmpty()) {
      words.add(one.text());
    }
    return words;
  }

  private static Set<String> each(Tree list, String... fields) {
    Set<String> words = new TreeSet<>();
    for (Tree one : list.entries()) {
      words.add(
          Arrays.stream(fields)
              .map(field -> one.at(field).text())
              .collect(Collectors.joining(" ")));
    }
    return words;
  }
}
