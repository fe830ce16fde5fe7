package io.github.tiderule.rules;

import io.github.tiderule.rules.parameter.Parameters;
import io.github.tiderule.rules.sentence.Sentence;
import io.github.tiderule.rules.sentence.Sentences;
import io.github.tiderule.rules.source.Sources;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.kie.api.KieBase;
import org.kie.api.definition.KiePackage;
import org.kie.api.definition.rule.Rule;

/** Reads what the rules say about themselves, and insists on it. */
final class RuleCards {

  private RuleCards() {}

  /** The cards of one stage, by rule name. */
  static Map<String, RuleCard> of(
      Stage stage, KieBase base, RuleTexts texts, Sources sources, Parameters parameters) {
    Sentences say = Sentences.with(parameters);
    Map<String, RuleCard> cards = new TreeMap<>();
    for (KiePackage kiePackage : base.getKiePackages()) {
      for (Rule rule : kiePackage.getRules()) {
        RuleCard card = card(stage, rule, texts, say);
        check(card, sources, parameters);
        cards.put(rule.getName(), card);
      }
    }
    return cards;
  }

  private static RuleCard card(Stage stage, Rule rule, RuleTexts texts, Sentences say) {
    List<String> sources =
        Arrays.stream(text(rule, "source").split(",")).map(String::strip).toList();
    return new RuleCard(
        stage,
        text(rule, "id"),
        new RuleCard.Told(
            told(rule, "title", say),
            told(rule, "looks", say),
            told(rule, "concludes", say),
            told(rule, "why", say)),
        sources,
        texts.parameters(rule.getName()));
  }

  private static Sentence told(Rule rule, String key, Sentences say) {
    try {
      return say.that(text(rule, key));
    } catch (IllegalArgumentException e) {
      throw new IllegalStateException("rule " + rule.getName() + " has a wrong @" + key, e);
    }
  }

  private static String text(Rule rule, String key) {
    @Nullable Object value = rule.getMetaData().get(key);
    if (!(value instanceof String text) || text.isBlank()) {
      throw new IllegalStateException("rule " + rule.getName() + " lacks @" + key);
    }
    return text.strip();
  }

  private static void check(RuleCard card, Sources sources, Parameters parameters) {
    for (String key : card.sources()) {
      if (!sources.contains(key)) {
        throw new IllegalStateException("rule " + card.id() + " names no known source: " + key);
      }
    }
    for (String id : card.parameters()) {
      if (!parameters.byId().containsKey(id)) {
        throw new IllegalStateException("rule " + card.id() + " names no known parameter: " + id);
      }
    }
  }
}
