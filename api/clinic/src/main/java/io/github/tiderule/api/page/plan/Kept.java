package io.github.tiderule.api.page.plan;

import io.github.tiderule.api.record.GivenAdvice;
import io.github.tiderule.api.report.text.KeyNames;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.api.words.Words;
import io.github.tiderule.format.cycle.CycleText;
import io.github.tiderule.format.cycle.Reading;
import io.github.tiderule.format.node.Node;
import java.time.OffsetDateTime;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** What is to be read from kept advice without asking the engine again. */
public record Kept(String now, String headline, OffsetDateTime asOf, OffsetDateTime validUntil) {

  /** From advice as it was written. */
  public static Kept of(GivenAdvice given) {
    Node.Members answer = Documents.of(given.answer());
    return new Kept(
        text(answer, "action", "now"),
        named(text(answer, "action", "headline"), given.cycleFile()),
        OffsetDateTime.parse(text(answer, "asOf")),
        OffsetDateTime.parse(text(answer, "validUntil")));
  }

  /** What advice asks about an observation, with its readings; absent where it asks nothing. */
  public static @Nullable String question(
      GivenAdvice given, String about, Texts texts, Words words) {
    if (Documents.of(given.answer()).byKey().get("questions") instanceof Node.Entries questions) {
      for (Node question : questions.all()) {
        if (question instanceof Node.Members asked
            && about.equals(Documents.text(asked, "about"))) {
          StringBuilder said = new StringBuilder(named(text(asked, "text"), given.cycleFile()));
          if (asked.byKey().get("readings") instanceof Node.Entries readings) {
            for (Node reading : readings.all()) {
              if (reading instanceof Node.Members one) {
                String unit = texts.word("unit", text(one, "unit"));
                said.append(' ').append(texts.say("question.reading", unit, text(one, "meaning")));
              }
            }
          }
          return words.localised(said.toString());
        }
      }
    }
    return null;
  }

  /** The headline with what people call the observations it speaks of. */
  private static String named(String headline, String cycleFile) {
    return CycleText.read(cycleFile) instanceof Reading.Read read
        ? new KeyNames(read.cycle()).in(headline)
        : headline;
  }

  private static String text(Node.Members answer, String... path) {
    return Objects.requireNonNull(Documents.text(answer, path), "advice without " + path[0]);
  }
}
