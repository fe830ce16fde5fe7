package io.github.tiderule.api.report.rulebook;

import io.github.tiderule.api.report.text.PlainNumber;
import io.github.tiderule.rules.RuleBase;
import io.github.tiderule.rules.RuleCard;
import io.github.tiderule.rules.parameter.Overlay;
import io.github.tiderule.rules.parameter.Parameter;
import java.util.List;

/** What the rule book says in each of its forms. */
final class RulebookWords {

  private RulebookWords() {}

  /** How much there is. */
  static String summary(RuleBase rules) {
    return rules.cards().size()
        + " rules, "
        + rules.parameters().all().size()
        + " parameters, "
        + rules.sources().all().size()
        + " sources.";
  }

  /** What a clinic changed, one line each; none where nothing is changed. */
  static List<String> localNotes(RuleBase rules) {
    return rules.overlay().map(RulebookWords::notes).orElse(List.of());
  }

  private static List<String> notes(Overlay overlay) {
    return overlay.changes().stream()
        .map(
            change ->
                "Local protocol "
                    + overlay.name()
                    + ": "
                    + change.id()
                    + " is "
                    + PlainNumber.of(change.value())
                    + " instead of "
                    + PlainNumber.of(change.usual())
                    + " "
                    + change.unit()
                    + ". "
                    + change.reason()
                    + " ("
                    + change.by()
                    + ")")
        .toList();
  }

  /** The parameters a rule names. */
  static List<Parameter> parameters(RuleBase rules, RuleCard card) {
    return card.parameters().stream().flatMap(id -> rules.parameters().find(id).stream()).toList();
  }

  /** A parameter's value and where it comes from. */
  static String value(Parameter parameter) {
    return PlainNumber.of(parameter.value())
        + " "
        + parameter.unit()
        + " ("
        + parameter.source()
        + "; "
        + parameter.read()
        + ")";
  }
}
