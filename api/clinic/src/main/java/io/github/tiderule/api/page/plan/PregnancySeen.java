package io.github.tiderule.api.page.plan;

import io.github.tiderule.api.words.Texts;
import io.github.tiderule.api.words.Words;
import io.github.tiderule.format.node.Node;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** What a scan or a radiograph showed of the fetuses, in words. */
final class PregnancySeen {

  private PregnancySeen() {}

  static List<String> words(Node.Members document, Texts texts, Words words) {
    List<String> said = new ArrayList<>();
    String fetuses = Documents.text(document, "fetuses");
    if (fetuses != null) {
      said.add(texts.say(fetuses.equals("1") ? "said.fetuses.one" : "said.fetuses.many", fetuses));
    }
    for (String name : List.of("innerChorionicCavityMm", "biparietalMm")) {
      if (document.byKey().get(name) instanceof Node.Entries entries) {
        said.add(
            texts.say(
                "said." + name,
                entries.all().stream()
                    .filter(Node.Digits.class::isInstance)
                    .map(one -> words.number(((Node.Digits) one).written()))
                    .collect(Collectors.joining("; "))));
      }
    }
    if (document.byKey().get("skeletonSeen") instanceof Node.Flag flag) {
      said.add(texts.say(flag.value() ? "skeleton.yes" : "skeleton.no"));
    }
    return said;
  }
}
