package io.github.tiderule.rules;

import io.github.tiderule.rules.condition.RuleConditions;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.drools.model.Model;
import org.drools.model.Rule;
import org.jspecify.annotations.Nullable;
import org.kie.api.KieBase;

/** The rules of one stage. Safe for use by many threads. */
final class StageRules {

  private final KieBase base;
  private final Map<String, RuleCard> cards;
  private final List<Model> models;
  private final RuleTexts texts;
  private volatile @Nullable Map<String, RuleConditions> conditions;

  StageRules(KieBase base, Map<String, RuleCard> cards, List<Model> models, RuleTexts texts) {
    this.base = base;
    this.cards = cards;
    this.models = models;
    this.texts = texts;
  }

  /** The same rules compiled otherwise. */
  StageRules compiledAs(KieBase other) {
    return new StageRules(other, cards, models, texts);
  }

  KieBase base() {
    return base;
  }

  /** The cards by rule name. */
  Map<String, RuleCard> cards() {
    return cards;
  }

  /**
   * The conditions by rule name, taken apart when first asked for; without those that cannot be
   * told one by one.
   */
  Map<String, RuleConditions> conditions() {
    Map<String, RuleConditions> ready = conditions;
    if (ready == null) {
      ready = new TreeMap<>();
      for (Model model : models) {
        for (Rule rule : model.getRules()) {
          try {
            ready.put(rule.getName(), ConditionReader.read(rule, texts.imports(rule.getName())));
          } catch (ConditionReader.Unreadable e) {
            // such a rule works like any other; it is only not explained, and a test names it
          }
        }
      }
      conditions = ready;
    }
    return ready;
  }
}
