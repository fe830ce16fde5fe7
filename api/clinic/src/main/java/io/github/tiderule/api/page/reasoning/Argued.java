package io.github.tiderule.api.page.reasoning;

import io.github.tiderule.api.report.text.Telling;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.api.words.Words;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.Reasoning;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.reasoning.LocalProtocol;
import io.github.tiderule.rules.source.Sources;
import java.util.List;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * The whole argument of a plan, or as much of it as a filter keeps.
 *
 * @param because rules the headline follows from
 * @param choices what can be filtered by
 * @param asked the rule asked for; absent where none is
 * @param arguments one for each stage
 * @param estimate absent where nothing can be said, or a part of the argument is asked for
 * @param whelping absent where there is nothing to count from
 * @param silent rules one condition short of speaking
 * @param untold how many more there are, further off
 * @param cited every source named above, by key
 * @param local the clinic's own parameters; absent where there are none
 */
public record Argued(
    String headline,
    List<String> because,
    Choices choices,
    Filter filter,
    @Nullable Asked asked,
    List<Evidence> evidence,
    List<Argument> arguments,
    @Nullable Estimate estimate,
    List<Day> days,
    List<Dispute> disputes,
    List<Compared> thumbs,
    @Nullable Compared whelping,
    List<Silent> silent,
    int untold,
    List<Cited> cited,
    @Nullable LocalProtocol local,
    String engine,
    String rules) {

  /** What can be filtered by: values and what people call them. */
  public record Choices(List<Named> observations, List<Named> rules, List<Named> days) {}

  /** A rule one condition short of speaking, and what it lacks. */
  public record Silent(String rule, String title, String missing) {}

  /**
   * What was reasoned about a season, in somebody's words.
   *
   * @param reasoning the answer to {@code cycle}
   */
  public static Argued of(
      CycleRecord cycle,
      Reasoning reasoning,
      Sources sources,
      Filter filter,
      Texts texts,
      Words words) {
    Advice advice = reasoning.advice();
    Telling telling = Telling.toVet(cycle, words);
    boolean whole = filter.isEmpty();
    return new Argued(
        telling.say(advice.action().headline()),
        advice.action().because(),
        choices(cycle, reasoning, filter, telling),
        filter,
        filter.rule().isEmpty() ? null : Asked.of(filter.rule(), reasoning, telling),
        Evidence.all(cycle, reasoning, filter, telling),
        Argument.all(cycle, reasoning, sources, filter, telling),
        whole ? Estimate.of(advice, words) : null,
        Day.all(advice, sources, filter, telling, texts),
        Dispute.all(advice, sources, filter, telling),
        whole ? Compared.breeding(advice, telling, texts) : List.of(),
        whole ? Compared.whelping(advice, telling, texts) : null,
        silent(advice, filter, telling),
        whole ? reasoning.nearMissesUntold() : 0,
        Cited.all(advice.sources(), sources),
        advice.stamp().overlay(),
        advice.stamp().engine(),
        advice.stamp().rules());
  }

  private static Choices choices(
      CycleRecord cycle, Reasoning reasoning, Filter filter, Telling telling) {
    Advice advice = reasoning.advice();
    TreeMap<String, String> rules = new TreeMap<>();
    advice.reasoning().trace().forEach(line -> rules.put(line.rule(), line.title()));
    advice.reasoning().notFired().forEach(rule -> rules.put(rule.rule(), rule.title()));
    reasoning.rule(filter.rule()).ifPresent(card -> rules.put(card.id(), card.title()));
    return new Choices(
        cycle.observations().stream().map(one -> Named.of(one.id(), telling)).toList(),
        rules.entrySet().stream()
            .map(rule -> new Named(rule.getKey(), rule.getKey() + " " + rule.getValue()))
            .toList(),
        advice.breeding().days().stream()
            .map(day -> day.day())
            .sorted()
            .map(day -> new Named(day.toString(), telling.words().shortDay(day)))
            .toList());
  }

  private static List<Silent> silent(Advice advice, Filter filter, Telling telling) {
    if (!filter.observation().isEmpty() || !filter.day().isEmpty()) {
      return List.of();
    }
    return advice.reasoning().notFired().stream()
        .filter(rule -> filter.keepsRule(rule.rule()))
        .map(rule -> new Silent(rule.rule(), rule.title(), telling.sayWithin(rule.missing())))
        .toList();
  }

  /** How many conclusions are shown. */
  public int count() {
    return arguments.stream().mapToInt(Argument::count).sum();
  }

  /** Whether nothing at all is left by the filter. */
  public boolean isNothing() {
    return count() == 0
        && evidence.isEmpty()
        && days.isEmpty()
        && disputes.isEmpty()
        && silent.isEmpty()
        && (asked == null || asked.outcome().equals("unknown"));
  }
}
