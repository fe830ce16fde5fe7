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
import java.util.function.UnaryOperator;
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
  private final TakenApart apart;

  StageRules(KieBase base, Map<String, RuleCard> cards, List<Model> models, RuleTexts texts) {
    this(base, cards, new TakenApart(models, texts));
  }

  private StageRules(KieBase base, Map<String, RuleCard> cards, TakenApart apart) {
    this.base = base;
    this.sessions = base.newKieSessionsPool(1);
    this.cards = cards;
    this.apart = apart;
  }

  /** The same rules compiled otherwise. */
  StageRules compiledAs(UnaryOperator<KieBase> compiler) {
    return new StageRules(compiler.apply(base), cards, apart);
  }

  /** The same rules, whose cards have the numbers of other parameters. */
  StageRules with(Sentences say) {
    Map<String, RuleCard> others = new TreeMap<>();
    cards.forEach((name, card) -> others.put(name, card.with(say)));
    return new StageRules(base, others, apart);
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
    return apart.rules().conditions();
  }

  /** Those of the stage's parameters that could matter to some facts. */
  List<Parameter> parameters(List<Parameter> all, Collection<?> facts) {
    return apart.rules().needs().map(needs -> needs.of(all, facts)).orElse(all);
  }

  /** The rules taken apart when first asked for, for all who have the same rules. */
  private static final class TakenApart {

    private final List<Model> models;
    private final RuleTexts texts;
    private volatile @Nullable Rules rules;

    /**
     * The rules taken apart.
     *
     * @param conditions by rule name
     * @param needs what they cannot do without; empty where that cannot be told of one of them
     */
    private record Rules(Map<String, RuleConditions> conditions, Optional<Needs> needs) {}

    TakenApart(List<Model> models, RuleTexts texts) {
      this.models = models;
      this.texts = texts;
    }

    Rules rules() {
      Rules ready = rules;
      if (ready == null) {
        ready = take();
        rules = ready;
      }
      return ready;
    }

    private Rules take() {
      Map<String, RuleConditions> conditions = new HashMap<>();
      boolean whole = true;
      for (Model model : models) {
        for (Rule rule : model.getRules()) {
          try {
            String name = rule.getName();
            conditions.put(name, ConditionReader.read(rule, texts.imports(name)));
          } catch (ConditionReader.Unreadable e) {
            // such a rule works like any other; it is only not explained, and a test names it
            whole = false;
          }
        }
      }
      return new Rules(conditions, whole ? Needs.ofRules(conditions.values()) : Optional.empty());
    }
  }
}
