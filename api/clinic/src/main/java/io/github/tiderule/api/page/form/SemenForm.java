package io.github.tiderule.api.page.form;

import io.github.tiderule.api.words.Texts;
import io.github.tiderule.format.node.Node;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * The semen in hand, for the sheet of the day, as a form. Fields of a part are named {@code
 * PART-FIELD}, those of a fraction of the ejaculate {@code fractions-ROW-FIELD}.
 */
public final class SemenForm implements PartForm {

  /** The fields of each part that are numbers. */
  private static final Map<String, List<String>> NUMBERS =
      Map.of(
          "ejaculate",
          List.of(
              "concentrationMillionPerMl",
              "progressivelyMotilePercent",
              "normalPercent",
              "temperatureC"),
          "certificate",
          List.of(
              "units",
              "spermPerUnitMillion",
              "volumeMlPerUnit",
              "postThawProgressivelyMotilePercent",
              "postThawNormalPercent"),
          "arrival",
          List.of(
              "temperatureC",
              "volumeMl",
              "concentrationMillionPerMl",
              "totalSpermMillion",
              "progressivelyMotilePercent",
              "normalPercent"),
          "wanted",
          List.of("volumeMl", "concentrationMillionPerMl", "doses"));

  private static final String PART = "insemination";
  private static final String FRACTIONS = "fractions";
  private static final String EXTENDER = "extenderTemperatureC";

  private final ZoneId zone;
  private final Texts texts;

  private SemenForm(ZoneId zone, Texts texts) {
    this.zone = zone;
    this.texts = texts;
  }

  /** For where she is. */
  public static SemenForm of(ZoneId zone, Texts texts) {
    return new SemenForm(zone, texts);
  }

  @Override
  public Node.@Nullable Members read(Typed typed, Node.Members was) {
    Part part =
        new Part()
            .text("at", LocalTimes.moment(typed, "at", zone, texts))
            .part("ejaculate", ejaculate(typed))
            .part("certificate", certificate(typed))
            .part("arrival", arrival(typed))
            .part("wanted", numbers(typed, "wanted"))
            .number(EXTENDER, Amount.of(typed, EXTENDER, false, texts));
    return typed.isGood() ? PartForm.with(was, PART, part) : null;
  }

  private Part ejaculate(Typed typed) {
    Part ejaculate =
        new Part()
            .text("collectedAt", LocalTimes.moment(typed, "ejaculate-collectedAt", zone, texts));
    List<Node> fractions = new ArrayList<>();
    for (int i = 0; typed.hasRow(FRACTIONS, i); i++) {
      String prefix = FRACTIONS + "-" + i + "-";
      if (!typed.hasAny(prefix)) {
        continue;
      }
      if (!typed.has(prefix + "fraction")) {
        typed.refuse(prefix + "fraction", texts.say("fault.fraction-unnamed"));
      }
      fractions.add(
          new Part()
              .text("fraction", typed.value(prefix + "fraction"))
              .number("volumeMl", Amount.of(typed, prefix + "volumeMl", false, texts))
              .text("appearance", typed.value(prefix + "appearance"))
              .members());
    }
    if (!fractions.isEmpty()) {
      ejaculate.node(FRACTIONS, new Node.Entries(fractions));
    } else if (typed.hasAny("ejaculate-")) {
      typed.refuse(FRACTIONS + "-0-fraction", texts.say("fault.fraction-missing"));
    }
    return numbers(typed, "ejaculate", ejaculate);
  }

  private Part certificate(Typed typed) {
    if (typed.hasAny("certificate-") && !typed.has("certificate-units")) {
      typed.refuse("certificate-units", texts.say("fault.units-missing"));
    }
    return numbers(typed, "certificate", new Part().text("unit", typed.value("certificate-unit")));
  }

  private Part arrival(Typed typed) {
    return numbers(
        typed,
        "arrival",
        new Part()
            .text("collectedAt", LocalTimes.moment(typed, "arrival-collectedAt", zone, texts))
            .text("arrivedAt", LocalTimes.moment(typed, "arrival-arrivedAt", zone, texts)));
  }

  private Part numbers(Typed typed, String part) {
    return numbers(typed, part, new Part());
  }

  private Part numbers(Typed typed, String name, Part part) {
    for (String field : NUMBERS.getOrDefault(name, List.of())) {
      part.number(field, number(typed, name + "-" + field, field.equals("temperatureC")));
    }
    return part;
  }

  /** A number; a parcel may have been below zero on opening. */
  private @Nullable String number(Typed typed, String name, boolean mayBeBelowZero) {
    String text = typed.value(name);
    boolean below = mayBeBelowZero && (text.startsWith("-") || text.startsWith("−"));
    Typed of = below ? Typed.nothing().fill(name, text.substring(1)) : typed;
    Amount amount = Amount.of(of, name, false, texts);
    if (amount == null) {
      if (below) {
        typed.refuse(name, texts.say("fault.number", text));
      }
      return null;
    }
    return below ? "-" + amount.digits() : amount.digits();
  }

  @Override
  public Typed filled(Node.Members season) {
    Typed typed = Typed.nothing();
    if (season.byKey().get(PART) instanceof Node.Members part) {
      Map<String, Node> fields = new LinkedHashMap<>(part.byKey());
      fields.forEach((name, node) -> fill(typed, name, name, node));
    }
    return typed;
  }

  private void fill(Typed typed, String field, String name, Node node) {
    if (node instanceof Node.Text text) {
      typed.fill(
          field,
          name.equals("at") || name.endsWith("At")
              ? LocalTimes.shown(text.value(), zone)
              : text.value());
    } else if (node instanceof Node.Digits digits) {
      typed.fill(field, digits.written());
    } else if (node instanceof Node.Members members) {
      members.byKey().forEach((inside, one) -> fill(typed, field + "-" + inside, inside, one));
    } else if (node instanceof Node.Entries entries) {
      for (int i = 0; i < entries.all().size(); i++) {
        fill(typed, name + "-" + i, name, entries.all().get(i));
      }
    }
  }
}
