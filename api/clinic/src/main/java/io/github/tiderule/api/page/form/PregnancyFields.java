package io.github.tiderule.api.page.form;

import io.github.tiderule.api.words.Texts;
import io.github.tiderule.format.node.Node;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** What is seen of a pregnancy, in the form of an observation. */
final class PregnancyFields {

  /** Fields that take several millimetres, one for each fetus. */
  static final List<String> MEASURES = List.of("innerChorionicCavityMm", "biparietalMm");

  /** A decimal comma has no space after it, a comma between two measures has one. */
  private static final String BETWEEN = "\\s*;\\s*|,?\\s+";

  private PregnancyFields() {}

  /** Reads the fields of {@code scan}, {@code radiograph} or {@code temperature}. */
  static void read(String kind, Typed typed, Part part, Texts texts) {
    switch (kind) {
      case "scan" -> scan(typed, part, texts);
      case "radiograph" -> radiograph(typed, part, texts);
      default -> {
        Amount celsius = Amount.of(typed, "celsius", false, texts);
        if (celsius == null) {
          typed.refuse("celsius", texts.say("fault.celsius-missing"));
        }
        part.number("celsius", celsius);
      }
    }
  }

  private static void scan(Typed typed, Part part, Texts texts) {
    String finding = typed.value("finding");
    if (finding.isEmpty()) {
      typed.refuse("finding", texts.say("choose.finding"));
    }
    Amount fetuses = Amount.of(typed, "fetuses", false, texts);
    boolean anything = fetuses != null && !fetuses.digits().equals("0");
    part.text("finding", finding).number("fetuses", fetuses);
    for (String name : MEASURES) {
      List<Node> all = measures(typed, name, texts);
      if (!all.isEmpty()) {
        part.node(name, new Node.Entries(all));
        anything = true;
      }
    }
    if (anything && finding.equals("not-pregnant")) {
      typed.refuse("finding", texts.say("fault.scan-contradicts"));
    }
  }

  private static void radiograph(Typed typed, Part part, Texts texts) {
    if (!typed.has("fetuses") && !typed.has("skeletonSeen")) {
      typed.refuse("fetuses", texts.say("fault.radiograph-missing"));
    }
    part.number("fetuses", Amount.of(typed, "fetuses", false, texts));
    if (typed.has("skeletonSeen")) {
      part.flag("skeletonSeen", typed.value("skeletonSeen").equals("yes"));
    }
  }

  private static List<Node> measures(Typed typed, String name, Texts texts) {
    List<Node> all = new ArrayList<>();
    if (!typed.has(name)) {
      return all;
    }
    for (String piece : typed.value(name).split(BETWEEN, -1)) {
      if (piece.isEmpty()) {
        continue;
      }
      Amount one = Amount.of(Typed.nothing().fill(name, piece), name, false, texts);
      if (one == null) {
        typed.refuse(name, texts.say("fault.measure", piece));
      } else {
        all.add(new Node.Digits(one.digits()));
      }
    }
    return all;
  }

  /** Measures as they are typed. */
  static String shown(Node.Entries entries) {
    return entries.all().stream()
        .filter(Node.Digits.class::isInstance)
        .map(one -> ((Node.Digits) one).written())
        .collect(Collectors.joining("; "));
  }
}
