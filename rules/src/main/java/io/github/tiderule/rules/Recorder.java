package io.github.tiderule.rules;

import io.github.tiderule.rules.conclusion.Conclusion;
import io.github.tiderule.rules.fact.observation.Observation;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.kie.api.event.rule.AfterMatchFiredEvent;
import org.kie.api.event.rule.BeforeMatchFiredEvent;
import org.kie.api.event.rule.DefaultAgendaEventListener;
import org.kie.api.event.rule.DefaultRuleRuntimeEventListener;
import org.kie.api.event.rule.ObjectInsertedEvent;
import org.kie.api.runtime.KieSession;
import org.kie.api.runtime.rule.Match;

/** Writes down what fires in one session, and keeps what still stands at the end. */
final class Recorder {

  private record Entry(
      RuleCard rule, List<String> observations, List<Conclusion> concluded, List<Object> matched) {}

  private final Map<String, RuleCard> cards;
  private final List<Entry> entries = new ArrayList<>();
  private @Nullable Entry open;

  private Recorder(Map<String, RuleCard> cards) {
    this.cards = cards;
  }

  static Recorder listeningTo(KieSession session, Map<String, RuleCard> cards) {
    Recorder recorder = new Recorder(cards);
    session.addEventListener(
        new DefaultAgendaEventListener() {
          @Override
          public void beforeMatchFired(BeforeMatchFiredEvent event) {
            recorder.begin(event.getMatch());
          }

          @Override
          public void afterMatchFired(AfterMatchFiredEvent event) {
            recorder.end();
          }
        });
    session.addEventListener(
        new DefaultRuleRuntimeEventListener() {
          @Override
          public void objectInserted(ObjectInsertedEvent event) {
            recorder.inserted(event.getObject());
          }
        });
    return recorder;
  }

  private void begin(Match match) {
    RuleCard card = cards.get(match.getRule().getName());
    if (card == null) {
      throw new IllegalStateException("a rule without a card fired: " + match.getRule().getName());
    }
    Set<String> ids = new LinkedHashSet<>();
    match.getObjects().forEach(object -> collect(object, ids));
    open = new Entry(card, List.copyOf(ids), new ArrayList<>(), List.copyOf(match.getObjects()));
  }

  private static void collect(Object object, Set<String> ids) {
    if (object instanceof Observation observation) {
      ids.add(observation.id());
    } else if (object instanceof Conclusion conclusion) {
      ids.addAll(conclusion.observations());
    } else if (object instanceof Collection<?> many) {
      many.forEach(one -> collect(one, ids));
    }
  }

  private void inserted(Object object) {
    if (open != null && object instanceof Conclusion conclusion) {
      open.concluded().add(conclusion);
    }
  }

  private void end() {
    if (open != null) {
      entries.add(open);
      open = null;
    }
  }

  StageResult result(KieSession session) {
    Set<Object> standing = Collections.newSetFromMap(new IdentityHashMap<>());
    standing.addAll(session.getObjects());
    List<Firing> firings = new ArrayList<>();
    for (Entry entry : entries) {
      List<Conclusion> kept = entry.concluded().stream().filter(standing::contains).toList();
      if (!kept.isEmpty()) {
        firings.add(new Firing(entry.rule(), entry.observations(), kept, entry.matched()));
      }
    }
    firings.sort(Firing.ORDER);
    return new StageResult(List.copyOf(firings));
  }
}
