package io.github.tiderule.api.page.plan;

import io.github.tiderule.api.record.GivenAdvice;
import io.github.tiderule.api.report.text.Telling;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.api.words.Words;
import io.github.tiderule.engine.advice.Action;
import io.github.tiderule.format.cycle.CycleText;
import io.github.tiderule.format.cycle.Reading;
import io.github.tiderule.format.node.Node;
import io.github.tiderule.rules.sentence.Part;
import io.github.tiderule.rules.sentence.Sentence;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * What is to be read from kept advice without asking the engine again. Its sentences are shown as
 * they were written; only where the thing to do is to answer the one question of the rule it
 * follows from, or a unit is asked for, is that said anew, with what people call the observation.
 */
public record Kept(String headline, OffsetDateTime asOf, OffsetDateTime validUntil) {

  /** From advice as it was written. */
  public static Kept of(GivenAdvice given, Texts texts, Words words) {
    Node.Members answer = Documents.of(given.answer());
    String about = asksAbout(answer);
    return new Kept(
        about == null
            ? text(answer, "action", "headline")
            : texts.say("home.answer", named(about, given.cycleFile(), words)),
        OffsetDateTime.parse(text(answer, "asOf")),
        validUntil(given));
  }

  /** When kept advice is to be asked for again. */
  public static OffsetDateTime validUntil(GivenAdvice given) {
    return OffsetDateTime.parse(text(Documents.of(given.answer()), "validUntil"));
  }

  /** The observation whose question is to be answered first; absent where that is not the one. */
  private static @Nullable String asksAbout(Node.Members answer) {
    Node.Members action = Objects.requireNonNull(answer.members("action"), "advice without action");
    if (!Action.Now.ANSWER.word().equals(action.text("now"))) {
      return null;
    }
    List<String> because = texts(action, "because");
    List<String> restsOn =
        answer.objects("trace").stream()
            .filter(line -> because.contains(line.text("rule")))
            .flatMap(line -> texts(line, "matched").stream())
            .toList();
    List<Node.Members> asked =
        answer.objects("questions").stream()
            .filter(question -> restsOn.contains(question.text("about")))
            .toList();
    return asked.size() == 1 ? asked.get(0).text("about") : null;
  }

  private static List<String> texts(Node.Members holder, String name) {
    return holder.entries(name).stream()
        .filter(Node.Text.class::isInstance)
        .map(one -> ((Node.Text) one).value())
        .toList();
  }

  private static String named(String observation, String cycleFile, Words words) {
    return CycleText.read(cycleFile) instanceof Reading.Read read
        ? Telling.toPerson(read.cycle(), words).sayWithin(Sentence.of("{}", Part.key(observation)))
        : observation;
  }

  /**
   * What advice asks about an observation, with its readings; absent where it asks nothing. Which
   * unit it is in is asked anew, with what people call it.
   */
  public static @Nullable String question(
      GivenAdvice given, String about, Texts texts, Words words) {
    for (Node.Members question : Documents.of(given.answer()).objects("questions")) {
      if (about.equals(question.text("about"))) {
        StringBuilder said =
            new StringBuilder(
                asksUnit(question)
                    ? texts.say("question.unit", named(about, given.cycleFile(), words))
                    : text(question, "text"));
        for (Node.Members reading : question.objects("readings")) {
          String unit = texts.word("unit", text(reading, "unit"));
          said.append(' ').append(texts.say("question.reading", unit, text(reading, "meaning")));
        }
        return said.toString();
      }
    }
    return null;
  }

  private static boolean asksUnit(Node.Members question) {
    return question.objects("readings").stream()
            .map(reading -> text(reading, "unit"))
            .distinct()
            .count()
        > 1;
  }

  private static String text(Node.Members answer, String... path) {
    return Objects.requireNonNull(Documents.text(answer, path), "advice without " + path[0]);
  }
}
