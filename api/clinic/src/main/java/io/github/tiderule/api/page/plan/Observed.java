package io.github.tiderule.api.page.plan;

import io.github.tiderule.api.record.Entry;
import io.github.tiderule.api.report.text.Telling;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.api.words.Words;
import io.github.tiderule.engine.change.Told;
import io.github.tiderule.format.node.Node;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * Something that was entered.
 *
 * @param number of its last entry
 * @param corrected whether it was entered otherwise before
 * @param notes how it is taken, where not simply as reported
 */
public record Observed(
    String id,
    int number,
    String kind,
    String words,
    String when,
    OffsetDateTime at,
    boolean corrected,
    List<String> notes) {

  /** Everything there is now, last first. */
  public static List<Observed> all(List<Entry> current, Told told, Texts texts, Words words) {
    Telling telling = Telling.toPerson(told.cycle(), words);
    List<Observed> all = new ArrayList<>();
    for (Entry entry : current) {
      Node.Members document = Documents.of(Objects.requireNonNull(entry.document()));
      all.add(of(entry, document, told, telling, texts));
    }
    all.sort(Comparator.comparing((Observed one) -> one.at()).reversed());
    return List.copyOf(all);
  }

  private static Observed of(
      Entry entry, Node.Members document, Told told, Telling telling, Texts texts) {
    OffsetDateTime at = at(document, told.cycle().zone());
    return new Observed(
        entry.observation(),
        entry.number(),
        Objects.requireNonNull(Documents.text(document, "kind")),
        words(document, texts, telling.words()),
        telling.words().shortMoment(at),
        at,
        entry.replaces() != null,
        told.advice().reasoning().observationNotes().stream()
            .filter(note -> note.observation().equals(entry.observation()))
            .map(note -> telling.say(note.text()))
            .toList());
  }

  /** When it was, where she is. */
  public static OffsetDateTime at(Node.Members document, ZoneId zone) {
    return OffsetDateTime.parse(Objects.requireNonNull(Documents.text(document, "at")))
        .toInstant()
        .atZone(zone)
        .toOffsetDateTime();
  }

  /** What was seen, as in {@code Progesterone 3.2 ng/mL, CLIA, laboratory A}. */
  public static String words(Node.Members document, Texts texts, Words words) {
    String kind = Objects.requireNonNull(Documents.text(document, "kind"));
    StringBuilder said = new StringBuilder(texts.word("kind", kind));
    switch (kind) {
      case "progesterone" -> {
        said.append(' ')
            .append(Objects.requireNonNullElse(Documents.text(document, "comparator"), ""))
            .append(words.number(part(document, "value")))
            .append(unit(document, texts));
        choice(said, document, "method", texts);
        String laboratory = Documents.text(document, "laboratory");
        if (laboratory != null) {
          said.append(", ").append(texts.say("said.laboratory", laboratory));
        }
      }
      case "progesterone-band" ->
          said.append(' ')
              .append(words.number(part(document, "low")))
              .append('–')
              .append(words.number(part(document, "high")))
              .append(unit(document, texts));
      case "cytology" -> {
        String cornified = Documents.text(document, "cornifiedPercent");
        if (cornified != null) {
          said.append(", ").append(texts.say("said.cornified", words.number(cornified)));
        }
        choice(said, document, "neutrophils", texts);
      }
      case "sign" -> {
        said.setLength(0);
        said.append(texts.word("sign", part(document, "sign")));
        if (document.byKey().get("present") instanceof Node.Flag flag && !flag.value()) {
          said.append(": ").append(texts.say("said.not-seen"));
        }
      }
      case "scan", "radiograph" -> {
        choice(said, document, "finding", texts);
        PregnancySeen.words(document, texts, words).forEach(one -> said.append(", ").append(one));
      }
      case "temperature" ->
          said.append(' ').append(words.number(part(document, "celsius"))).append(" °C");
      default -> {
        for (String name : List.of("result", "folds", "finding", "semen")) {
          choice(said, document, name, texts);
        }
        // a natural mating has no other route, and needs no word for it
        if (!"natural".equals(Documents.text(document, "route"))) {
          choice(said, document, "route", texts);
        }
      }
    }
    return said.toString();
  }

  private static String part(Node.Members document, String name) {
    return Objects.requireNonNullElse(Documents.text(document, name), "");
  }

  private static String unit(Node.Members document, Texts texts) {
    String unit = Documents.text(document, "unit");
    return unit == null ? ", " + texts.say("said.no-unit") : " " + texts.word("unit", unit);
  }

  private static void choice(StringBuilder said, Node.Members document, String name, Texts texts) {
    String word = Documents.text(document, name);
    if (word != null) {
      said.append(", ").append(texts.word(name, word));
    }
  }

  /** Words for something that may have been taken back. */
  public static @Nullable String words(Entry entry, Texts texts, Words words) {
    String document = entry.document();
    return document == null ? null : words(Documents.of(document), texts, words);
  }
}
