package io.github.tiderule.rules;

import io.github.tiderule.rules.sentence.Sentence;
import io.github.tiderule.rules.sentence.Sentences;
import java.util.Comparator;
import java.util.List;

/**
 * What a rule says about itself, with the numbers of the parameters in force.
 *
 * @param id its name, never used again once retired
 * @param told what it says, as data
 * @param sources keys of the source list, at least one
 * @param parameters ids of the parameters its conditions name
 */
public record RuleCard(
    Stage stage, String id, Told told, List<String> sources, List<String> parameters) {

  /** By chapter and id. */
  public static final Comparator<RuleCard> ORDER =
      Comparator.comparing(RuleCard::chapter).thenComparing(RuleCard::id);

  /**
   * The words of a card.
   *
   * @param title the finding in a few words
   * @param looksAt what it looks at
   * @param concludes what it concludes
   * @param why why the trade holds this
   */
  public record Told(Sentence title, Sentence looksAt, Sentence concludes, Sentence why) {

    private Told with(Sentences say) {
      return new Told(
          say.that(title.template()),
          say.that(looksAt.template()),
          say.that(concludes.template()),
          say.that(why.template()));
    }
  }

  /** Where the rule is told. */
  public Chapter chapter() {
    return stage.chapter();
  }

  /** The finding in a few words. */
  public String title() {
    return told.title().toString();
  }

  /** What it looks at. */
  public String looksAt() {
    return told.looksAt().toString();
  }

  /** What it concludes. */
  public String concludes() {
    return told.concludes().toString();
  }

  /** Why the trade holds this. */
  public String why() {
    return told.why().toString();
  }

  /** The rule as one sentence, with its full stop. */
  public String sentence() {
    return "Given " + looksAt() + ", " + concludes() + ".";
  }

  /** The same card with the numbers of other parameters. */
  RuleCard with(Sentences say) {
    return new RuleCard(stage, id, told.with(say), sources, parameters);
  }
}
