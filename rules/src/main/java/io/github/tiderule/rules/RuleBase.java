package io.github.tiderule.rules;

import io.github.tiderule.rules.condition.Given;
import io.github.tiderule.rules.parameter.Overlay;
import io.github.tiderule.rules.parameter.Parameter;
import io.github.tiderule.rules.parameter.Parameters;
import io.github.tiderule.rules.sentence.Sentences;
import io.github.tiderule.rules.source.Sources;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.ForkJoinTask;
import java.util.function.BiFunction;
import org.drools.model.Model;
import org.drools.modelcompiler.KieBaseBuilder;
import org.jspecify.annotations.Nullable;
import org.kie.api.KieBase;
import org.kie.api.runtime.KieSession;

/**
 * The compiled rules with their parameters and sources.
 *
 * <p>Immutable and safe for use by many threads; make one per process. Each {@link #run} has a
 * session to itself, which is emptied and used again.
 */
public final class RuleBase {

  /** The global by which rules tell what they conclude. */
  private static final String SAY = "say";

  private final Map<Stage, StageRules> stages;
  private final Parameters parameters;
  private final Sentences sentences;
  private final Sources sources;
  private final List<RuleCard> cards;
  private final RuleTexts texts;
  private final @Nullable Overlay overlay;

  private RuleBase(
      Map<Stage, StageRules> stages,
      Parameters parameters,
      Sources sources,
      RuleTexts texts,
      @Nullable Overlay overlay) {
    this.stages = stages;
    this.parameters = parameters;
    this.sentences = Sentences.with(parameters);
    this.sources = sources;
    this.cards =
        stages.values().stream()
            .flatMap(rules -> rules.cards().values().stream())
            .sorted(RuleCard.ORDER)
            .toList();
    this.texts = texts;
    this.overlay = overlay;
  }

  /**
   * The same rules with a clinic's own parameters, which they also tell of.
   *
   * @throws IllegalArgumentException if these rules have an overlay already
   */
  public RuleBase with(Overlay local) {
    if (overlay != null) {
      throw new IllegalArgumentException("the rules have an overlay already: " + overlay.name());
    }
    Parameters changed = parameters.with(local);
    Sentences say = Sentences.with(changed);
    Map<Stage, StageRules> others = new EnumMap<>(Stage.class);
    stages.forEach((stage, rules) -> others.put(stage, rules.with(say)));
    return new RuleBase(others, changed, sources, texts, local);
  }

  /**
   * Loads the rules, and checks that they are whole.
   *
   * @throws IllegalStateException if a rule is missing, lacks metadata, or names an unknown source
   *     or parameter
   */
  public static RuleBase load() {
    // most of a short run is spent here, so the texts are read while the rules are compiled
    ForkJoinTask<RuleTexts> reading = ForkJoinPool.commonPool().submit(RuleTexts::load);
    Map<Stage, List<String>> models = CompiledRules.byStage();
    // the rule engine finds its services when it is first used, and not safely from two threads:
    // one stage is compiled alone before the others are compiled side by side
    Map<Stage, Compiled> compiledStages = new ConcurrentHashMap<>();
    Stage first = Stage.READING;
    compiledStages.put(first, compiled(models.getOrDefault(first, List.of())));
    Arrays.stream(Stage.values())
        .filter(stage -> stage != first)
        .parallel()
        .forEach(
            stage -> compiledStages.put(stage, compiled(models.getOrDefault(stage, List.of()))));
    Parameters parameters = Parameters.load();
    Sources sources = Sources.load();
    RuleTexts texts = reading.join();
    Map<Stage, StageRules> stages = new EnumMap<>(Stage.class);
    compiledStages.forEach(
        (stage, rules) ->
            stages.put(
                stage,
                new StageRules(
                    rules.base(),
                    RuleCards.of(stage, rules.base(), texts, sources, parameters),
                    rules.models(),
                    texts)));
    int compiled = stages.values().stream().mapToInt(rules -> rules.cards().size()).sum();
    if (compiled != texts.count()) {
      throw new IllegalStateException(
          "the rule base is not whole: "
              + texts.count()
              + " rules written, "
              + compiled
              + " compiled");
    }
    return new RuleBase(stages, parameters, sources, texts, null);
  }

  /** The rules of one stage as they are run. */
  private record Compiled(List<Model> models, KieBase base) {}

  private static Compiled compiled(List<String> names) {
    List<Model> models = CompiledRules.models(names);
    return new Compiled(models, KieBaseBuilder.createKieBaseFromModel(models));
  }

  /** The same rules compiled otherwise; for holding that this makes no difference. */
  RuleBase compiledAs(BiFunction<Stage, KieBase, KieBase> compiler) {
    Map<Stage, StageRules> others = new EnumMap<>(Stage.class);
    stages.forEach(
        (stage, rules) -> others.put(stage, rules.compiledAs(base -> compiler.apply(stage, base))));
    return new RuleBase(others, parameters, sources, texts, overlay);
  }

  /** All rules, by chapter and id. */
  public List<RuleCard> cards() {
    return cards;
  }

  /** The rules by concern: by chapter, then in the order of their first ids. */
  public List<Concern> concerns() {
    Map<String, List<RuleCard>> byFile = new LinkedHashMap<>();
    for (RuleCard card : cards) {
      byFile.computeIfAbsent(texts.file(card.id()), file -> new ArrayList<>()).add(card);
    }
    return byFile.entrySet().stream()
        .map(
            entry ->
                new Concern(
                    entry.getValue().get(0).stage().chapter(),
                    entry.getKey(),
                    texts.concern(entry.getKey()),
                    entry.getValue()))
        .toList();
  }

  public Parameters parameters() {
    return parameters;
  }

  /** Makes sentences whose numbers are those of the parameters in force. */
  public Sentences sentences() {
    return sentences;
  }

  public Sources sources() {
    return sources;
  }

  /** The clinic's own parameters, if there are any. */
  public Optional<Overlay> overlay() {
    return Optional.ofNullable(overlay);
  }

  /** SHA-256 over rule texts, parameters and sources: {@code sha256:} and 64 hexadecimal digits. */
  public String fingerprint() {
    return texts.fingerprint();
  }

  /**
   * Runs one stage over some facts. The order of the facts does not matter.
   *
   * @param facts immutable records; the stage's parameters are added to them, but for those of
   *     rules that cannot speak of such facts
   */
  public StageResult run(Stage stage, Collection<?> facts) {
    List<Object> sorted = FactOrder.sorted(facts);
    StageRules rules = Objects.requireNonNull(stages.get(stage));
    KieSession session = rules.session();
    try {
      Recorder recorder = Recorder.listeningTo(session, rules.cards());
      session.setGlobal(SAY, sentences);
      for (Parameter parameter : rules.parameters(parameters.of(stage.chapter().word()), sorted)) {
        session.insert(parameter);
      }
      for (Object fact : sorted) {
        session.insert(fact);
      }
      session.fireAllRules();
      return recorder.result(session);
    } finally {
      session.dispose();
    }
  }

  /**
   * Why the rules of a stage spoke or kept silent.
   *
   * @param facts what the stage was run over; of equally near ones the last is told of
   * @param result what it concluded
   */
  public Account account(Stage stage, Collection<?> facts, StageResult result) {
    StageRules rules = Objects.requireNonNull(stages.get(stage));
    return new Account(
        rules.cards(),
        rules.conditions(),
        new Given(parameters, Account.facts(facts, result)),
        result);
  }
}
