package io.github.tiderule.api.page.reasoning;

import io.github.tiderule.api.report.text.PlainNumber;
import io.github.tiderule.api.words.Words;
import io.github.tiderule.engine.advice.reasoning.EngineStep;
import io.github.tiderule.rules.RuleBase;
import io.github.tiderule.rules.RuleCard;
import io.github.tiderule.rules.parameter.Overlay;
import io.github.tiderule.rules.parameter.Parameter;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * A rule of the book, or a step that the engine reckons.
 *
 * @param stage the word of the stage it speaks in; empty for a step of the engine
 * @param looks what it looks at; empty likewise
 * @param concludes what it concludes; empty likewise
 * @param why why the trade holds it; empty likewise
 */
public record RuleShown(
    String id,
    String title,
    String stage,
    String looks,
    String concludes,
    String why,
    List<Figure> figures,
    List<Cited> sources) {

  private static final Set<String> NO_UNIT = Set.of("1", "ratio");

  /**
   * A number a rule uses.
   *
   * @param range least and greatest value that makes sense
   * @param local why a clinic set it otherwise, and what it is usually; empty where it did not
   */
  public record Figure(
      String id,
      String meaning,
      String value,
      String range,
      Cited source,
      String read,
      String since,
      String local) {

    /** Whether how it was read is not said by the name of its source already. */
    public boolean saysHow() {
      return !source.brief().equals(read);
    }
  }

  /** The rule of an id. */
  public static Optional<RuleShown> of(String id, RuleBase rules, Words words) {
    Optional<RuleShown> card =
        rules.cards().stream()
            .filter(one -> one.id().equals(id))
            .findFirst()
            .map(one -> of(one, rules, words));
    return card.isPresent()
        ? card
        : Stream.of(EngineStep.values())
            .filter(step -> step.id().equals(id))
            .findFirst()
            .map(
                step ->
                    new RuleShown(
                        id,
                        step.title(),
                        "",
                        "",
                        "",
                        "",
                        List.of(),
                        Cited.all(step.sources(), rules.sources())));
  }

  private static RuleShown of(RuleCard card, RuleBase rules, Words words) {
    return new RuleShown(
        card.id(),
        card.title(),
        card.chapter().word(),
        card.looksAt(),
        card.concludes(),
        card.why(),
        card.parameters().stream()
            .flatMap(id -> rules.parameters().find(id).stream())
            .map(parameter -> figure(parameter, rules, words))
            .toList(),
        Cited.all(card.sources(), rules.sources()));
  }

  private static Figure figure(Parameter parameter, RuleBase rules, Words words) {
    return new Figure(
        parameter.id(),
        parameter.meaning(),
        words.number(PlainNumber.of(parameter.value()))
            + (NO_UNIT.contains(parameter.unit()) ? "" : " " + parameter.unit()),
        words.number(PlainNumber.of(parameter.min()))
            + " – "
            + words.number(PlainNumber.of(parameter.max())),
        Cited.of(parameter.source(), rules.sources()),
        parameter.read(),
        words.day(parameter.since()),
        rules.overlay().map(overlay -> local(parameter, overlay, words)).orElse(""));
  }

  private static String local(Parameter parameter, Overlay overlay, Words words) {
    return overlay.changes().stream()
        .filter(change -> change.id().equals(parameter.id()))
        .map(
            change ->
                overlay.name()
                    + ": "
                    + words.number(PlainNumber.of(change.usual()))
                    + " → "
                    + words.number(PlainNumber.of(change.value()))
                    + ". "
                    + change.reason()
                    + " ("
                    + change.by()
                    + ")")
        .findFirst()
        .orElse("");
  }
}
