package io.github.tiderule.api.page.form;

import io.github.tiderule.api.words.Texts;
import io.github.tiderule.format.node.Node;
import io.github.tiderule.rules.fact.observation.SignKind;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * One observation as a form: what is typed becomes what a cycle file has, and the other way round.
 */
public final class ObservationForm {

  /** The kinds, with the letter their ids begin with. */
  private static final Map<String, String> LETTERS =
      Map.ofEntries(
          Map.entry("progesterone", "p"),
          Map.entry("progesterone-band", "k"),
          Map.entry("lh", "l"),
          Map.entry("cytology", "c"),
          Map.entry("vaginoscopy", "v"),
          Map.entry("sign", "s"),
          Map.entry("ultrasound", "u"),
          Map.entry("breeding", "m"),
          Map.entry("scan", "g"),
          Map.entry("radiograph", "x"),
          Map.entry("temperature", "t"));

  /** The kinds in the order they are offered: of a season, then of a pregnancy and a whelping. */
  public static final List<String> OFFERED =
      List.of(
          "progesterone",
          "sign",
          "breeding",
          "lh",
          "cytology",
          "progesterone-band",
          "vaginoscopy",
          "ultrasound",
          "temperature",
          "scan",
          "radiograph");

  private final String kind;
  private final ZoneId zone;
  private final Texts texts;

  private ObservationForm(String kind, ZoneId zone, Texts texts) {
    this.kind = kind;
    this.zone = zone;
    this.texts = texts;
  }

  /**
   * For a kind.
   *
   * @param zone where she is
   */
  public static ObservationForm of(String kind, ZoneId zone, Texts texts) {
    return new ObservationForm(kind, zone, texts);
  }

  /** Whether observations of a kind are entered in a form. */
  public static boolean isKind(String kind) {
    return LETTERS.containsKey(kind);
  }

  /** The letter ids of a kind begin with. */
  public static String letter(String kind) {
    return LETTERS.getOrDefault(kind, "o");
  }

  /** Ids for new observations of a kind: its letter, and the first numbers that are free. */
  public static List<String> freeIds(String kind, Set<String> taken, int wanted) {
    return IntStream.iterate(1, number -> number + 1)
        .mapToObj(number -> letter(kind) + number)
        .filter(id -> !taken.contains(id))
        .limit(wanted)
        .toList();
  }

  /**
   * The observation; absent where something typed is wrong, which is then said.
   *
   * @param now a result cannot have been drawn after it
   */
  public Node.@Nullable Members read(String id, Typed typed, Instant now) {
    Part part = new Part().text("id", id).text("kind", kind);
    part.text("at", LocalTimes.moment(typed, "at", zone, texts));
    switch (kind) {
      case "progesterone" -> value(typed, part);
      case "progesterone-band" -> band(typed, part);
      case "lh" -> word(typed, part, "result");
      case "cytology" -> smear(typed, part);
      case "vaginoscopy" -> word(typed, part, "folds");
      case "sign" -> {
        word(typed, part, "sign");
        if (!typed.has("present")) {
          typed.refuse("present", texts.say("choose.present"));
        }
        part.flag("present", typed.value("present").equals("yes"));
        part.text("reason", typed.value("reason"));
      }
      case "ultrasound" -> word(typed, part, "finding");
      case "scan", "radiograph", "temperature" -> PregnancyFields.read(kind, typed, part, texts);
      default -> {
        word(typed, part, "semen");
        word(typed, part, "route");
        part.text("sire", typed.value("sire")).text("note", typed.value("note"));
      }
    }
    when(typed, now);
    return typed.isGood() ? part.members() : null;
  }

  /**
   * The observations of a form: several where several signs were seen at once, one otherwise; none
   * where something typed is wrong, which is then said.
   *
   * @param ids as many as there are signs
   */
  public List<Node.Members> readAll(List<String> ids, Typed typed, Instant now) {
    List<String> signs = typed.all("sign");
    if (!kind.equals("sign") || signs.size() < 2) {
      Node.Members one = read(ids.get(0), typed, now);
      return one == null ? List.of() : List.of(one);
    }
    String reason = typed.value("reason");
    List<Node.Members> all = new ArrayList<>();
    for (int i = 0; i < signs.size(); i++) {
      boolean refuses = signs.get(i).equals(SignKind.REFUSES.word());
      typed.fill("sign", signs.get(i)).fill("reason", refuses ? reason : "");
      Node.Members one = read(ids.get(i), typed, now);
      if (one != null) {
        all.add(one);
      }
    }
    if (!reason.isEmpty() && !signs.contains(SignKind.REFUSES.word())) {
      typed.refuse("reason", texts.say("fault.reason-of-refusal"));
    }
    typed.fill("sign", signs).fill("reason", reason);
    return typed.isGood() ? all : List.of();
  }

  /** Said last, since it stands last in the forms. */
  private void when(Typed typed, Instant now) {
    String at = LocalTimes.moment(typed, "at", zone, texts);
    if (at == null) {
      typed.refuse("at", texts.say("fault.at-missing"));
    } else if (OffsetDateTime.parse(at).toInstant().isAfter(now)) {
      typed.refuse("at", texts.say("fault.at-ahead"));
    }
  }

  private void word(Typed typed, Part part, String name) {
    if (!typed.has(name)) {
      typed.refuse(name, texts.say("choose." + name));
    }
    part.text(name, typed.value(name));
  }

  private void value(Typed typed, Part part) {
    String written = typed.value("value");
    Reported value = Reported.of(typed, "value", texts);
    if (value == null) {
      typed.refuse("value", texts.say("fault.value-missing"));
    } else {
      part.number("value", value.amount()).text("comparator", value.comparator());
    }
    unit(typed, part);
    part.text("method", typed.value("method"))
        .text("laboratory", typed.value("laboratory"))
        .text("specimen", typed.value("specimen"))
        .text("tube", typed.value("tube"))
        .texts("handling", typed.all("handling"))
        .text("reportedAt", LocalTimes.moment(typed, "reportedAt", zone, texts));
    if (value != null && !value.amount().digits().equals(written)) {
      part.text("asReported", written);
    }
  }

  private void unit(Typed typed, Part part) {
    if (!typed.has("unit")) {
      typed.refuse("unit", texts.say("fault.unit-missing"));
    } else if (!typed.value("unit").equals(Choices.NOT_STATED)) {
      part.text("unit", typed.value("unit"));
    }
  }

  private void band(Typed typed, Part part) {
    Amount low = Amount.of(typed, "low", false, texts);
    Amount high = Amount.of(typed, "high", false, texts);
    if (!typed.has("low") && !typed.has("high")) {
      typed.refuse("low", texts.say("fault.band-missing"));
    }
    part.number("low", low).number("high", high);
    unit(typed, part);
  }

  private void smear(Typed typed, Part part) {
    Amount cornified = Amount.of(typed, "cornifiedPercent", false, texts);
    if (!typed.has("cornifiedPercent") && !typed.has("neutrophils")) {
      typed.refuse("cornifiedPercent", texts.say("fault.smear-missing"));
    }
    part.number("cornifiedPercent", cornified).text("neutrophils", typed.value("neutrophils"));
  }

  /** A form filled in with an observation. */
  public Typed filled(Node.Members observation) {
    Typed typed = Typed.nothing();
    observation
        .byKey()
        .forEach(
            (name, node) -> {
              if (node instanceof Node.Text text) {
                typed.fill(
                    name,
                    name.equals("at") || name.equals("reportedAt")
                        ? LocalTimes.shown(text.value(), zone)
                        : text.value());
              } else if (node instanceof Node.Digits digits) {
                typed.fill(name, digits.written());
              } else if (node instanceof Node.Flag flag) {
                typed.fill(name, flag.value() ? "yes" : "no");
              } else if (node instanceof Node.Entries entries) {
                if (PregnancyFields.MEASURES.contains(name)) {
                  typed.fill(name, PregnancyFields.shown(entries));
                  return;
                }
                typed.fill(
                    name,
                    entries.all().stream()
                        .filter(Node.Text.class::isInstance)
                        .map(one -> ((Node.Text) one).value())
                        .toList());
              }
            });
    if (kind.equals("progesterone")) {
      typed.fill(
          "limit", typed.has("comparator") ? Reported.limit(typed.value("comparator")) : "equal");
    }
    if (kind.startsWith("progesterone") && !typed.has("unit")) {
      typed.fill("unit", Choices.NOT_STATED);
    }
    return typed;
  }
}
