package io.github.tiderule.rules;

import io.github.tiderule.rules.condition.Needs;
import io.github.tiderule.rules.condition.RuleConditions;
import io.github.tiderule.rules.parameter.Parameter;
import io.github.tiderule.rules.sentence.Sentences;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.drools.model.Model;
import org.drools.model.Rule;
import org.jspecify.annotations.Nullable;
import org.kie.api.KieBase;
import org.kie.api.runtime.KieSession;
import org.kie.api.runtime.KieSessionsPool;

/** The rules of one stage. Safe for use by many threads. */
final class StageRules {

  private final KieBase base;
  private final KieSessionsPool sessions;
  private final Map<String, RuleCard> cards;
  private final List<Model> models;
  private final RuleTexts texts;
  private volatile @Nullable Apart apart;

  /**
   * The rules taken apart.
   *
   * @param conditions by rule name
   * @param needs what they cannot do without; empty where that cannot be told of one of them
   */
  private record Apart(Map<String, RuleConditions> conditions, Optional<Needs> needs) {}

  StageRules(KieBase base, Map<String, RuleCard> cards, List<Model> models, RuleTexts texts) {
    this.base = base;
    this.sessions = base.newKieSessionsPool(1);
    this.cards = cards;
    this.models = models;
    this.texts = texts;
  }

  /** The same rules compiled otherwise. */
  StageRules compiledAs(KieBase other) {
    return new StageRules(other, cards, models, texts);
  }

  /** The same rules, whose cards have the numbers of other parameters. */
  StageRules with(Sentences say) {
    Map<String, RuleCard> others = new TreeMap<>();
    cards.forEach((name, card) -> others.put(name, card.with(say)));
    StageRules same = new StageRules(base, others, models, texts);
    same.apart = apart;
    return same;
  }

  /** An empty session; disposed of, it is emptied and kept for whoever asks next. */
  KieSession session() {
    return sessions.newKieSession();
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
    return apart().conditions();
  }

  /** Those of the stage's parameters that could matter to some facts. */
  List<Parameter> parameters(List<Parameter> all, Collection<?> facts) {
    return apart().needs().map(needs -> needs.of(all, facts)).orElse(all);
  }

  private Apart apart() {
    Apart ready = apart;
    if (ready == null) {
      ready = takenApart();
      apart = ready;
    }
    return ready;
  }

  private Apart takenApart() {
    Map<String, RuleConditions> conditions = new HashMap<>();
    boolean whole = true;
    for (Model model : models) {
      for (Rule rule : model.getRules()) {
        try {
          conditions.put(rule.getName(), ConditionReader.read(rule, texts.imports(rule.getName())));
        } catch (ConditionReader.Unreadable e) {
          // such a rule works like any other; it is only not explained, and a test names it
          whole = false;
        }
      }
    }
    return new Apart(conditions, whole ? Needs.ofRules(conditions.values()) : Optional.empty());
  }
}
