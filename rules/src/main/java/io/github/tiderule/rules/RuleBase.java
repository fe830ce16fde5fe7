package io.github.tiderule.rules;

import io.github.tiderule.rules.conclusion.Level;
import io.github.tiderule.rules.fact.CandidateDay;
import io.github.tiderule.rules.fact.Observation;
import io.github.tiderule.rules.parameter.Parameter;
import io.github.tiderule.rules.parameter.Parameters;
import io.github.tiderule.rules.source.Sources;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import org.drools.modelcompiler.KieBaseBuilder;
import org.kie.api.KieBase;
import org.kie.api.runtime.KieSession;

/**
 * The compiled rules with their parameters and sources.
 *
 * <p>Immutable and safe for use by many threads; make one per process. Each {@link #run} opens a
 * session of its own and closes it.
 */
public final class RuleBase {

  private final Map<Stage, StageRules> stages;
  private final Parameters parameters;
  private final Sources sources;
  private final List<RuleCard> cards;
  private final String fingerprint;

  /** Words that tell facts apart; what has a name of its own goes by that, which is quicker. */
  private static String key(Object fact) {
    if (fact instanceof Observation observation) {
      return "Observation " + observation.id();
    }
    if (fact instanceof Level level) {
      return "Level " + level.observation();
    }
    if (fact instanceof CandidateDay candidate) {
      return "CandidateDay " + candidate.day();
    }
    return fact.toString();
  }

  /** A fact with the words it is sorted by. */
  private record Keyed(String key, Object fact) {}

  private record StageRules(
      KieBase base, Map<String, RuleCard> cards, List<Parameter> parameters) {}

  private RuleBase(
      Map<Stage, StageRules> stages, Parameters parameters, Sources sources, String fingerprint) {
    this.stages = stages;
    this.parameters = parameters;
    this.sources = sources;
    this.cards =
        stages.values().stream()
            .flatMap(rules -> rules.cards().values().stream())
            .sorted(Comparator.comparing(RuleCard::stage).thenComparing(RuleCard::id))
            .toList();
    this.fingerprint = fingerprint;
  }

  /**
   * Loads the rules, and checks that they are whole.
   *
   * @throws IllegalStateException if a rule is missing, lacks metadata, or names an unknown source
   *     or parameter
   */
  public static RuleBase load() {
    Parameters parameters = Parameters.load();
    Sources sources = Sources.load();
    RuleTexts texts = RuleTexts.load();
    Map<Stage, List<String>> models = CompiledRules.byStage();
    // stages are compiled side by side: most of a short run is spent here
    Map<Stage, StageRules> stages =
        Arrays.stream(Stage.values())
            .parallel()
            .collect(
                Collectors.toConcurrentMap(
                    stage -> stage,
                    stage ->
                        stageRules(
                            stage,
                            models.getOrDefault(stage, List.of()),
                            texts,
                            sources,
                            parameters)));
    int compiled = stages.values().stream().mapToInt(rules -> rules.cards().size()).sum();
    if (compiled != texts.count()) {
      throw new IllegalStateException(
          "the rule base is not whole: "
              + texts.count()
              + " rules written, "
              + compiled
              + " compiled");
    }
    return new RuleBase(new EnumMap<>(stages), parameters, sources, texts.fingerprint());
  }

  private static StageRules stageRules(
      Stage stage, List<String> models, RuleTexts texts, Sources sources, Parameters parameters) {
    KieBase base = KieBaseBuilder.createKieBaseFromModel(CompiledRules.models(models));
    return new StageRules(
        base, RuleCards.of(stage, base, texts, sources, parameters), parameters.of(stage.word()));
  }

  /** All rules, by stage and id. */
  public List<RuleCard> cards() {
    return cards;
  }

  public Parameters parameters() {
    return parameters;
  }

  public Sources sources() {
    return sources;
  }

  /** SHA-256 over rule texts, parameters and sources: {@code sha256:} and 64 hexadecimal digits. */
  public String fingerprint() {
    return fingerprint;
  }

  /**
   * Runs one stage over some facts. The order of the facts does not matter.
   *
   * @param facts immutable records; the stage's parameters are added to them
   */
  public StageResult run(Stage stage, Collection<?> facts) {
    List<Keyed> sorted = new ArrayList<>(facts.size());
    for (Object fact : facts) {
      sorted.add(new Keyed(key(fact), fact));
    }
    sorted.sort(Comparator.comparing(Keyed::key));
    StageRules rules = Objects.requireNonNull(stages.get(stage));
    KieSession session = rules.base().newKieSession();
    try {
      Recorder recorder = Recorder.listeningTo(session, rules.cards());
      for (Parameter parameter : rules.parameters()) {
        session.insert(parameter);
      }
      for (Keyed keyed : sorted) {
        session.insert(keyed.fact());
      }
      session.fireAllRules();
      return recorder.result(session);
    } finally {
      session.dispose();
    }
  }
}
