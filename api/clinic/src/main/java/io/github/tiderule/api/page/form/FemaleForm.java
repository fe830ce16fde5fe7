package io.github.tiderule.api.page.form;

import io.github.tiderule.api.words.Texts;
import io.github.tiderule.format.node.Node;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Who she is, as a form. Treatments and earlier seasons are rows; an empty row is none. */
public final class FemaleForm {

  /** How many rows there are to fill in. */
  public static final int ROWS = 4;

  private static final List<String> TEXTS = List.of("name", "breed");
  private static final List<String> NUMBERS =
      List.of("bodyMassKg", "littersWhelped", "caesareans", "missedPregnancies");

  private static final String EARLIER = "earlierCycles";
  private static final String TREATMENTS = "treatments";

  /** Days of an earlier season; the first one tells the seasons apart. */
  private static final List<String> EARLIER_DAYS =
      List.of("firstBloodOn", "ovulatedOn", "dioestrusOn", "whelpedOn");

  private static final List<String> TREATMENT_DAYS = List.of("on", "removedOn");
  private static final List<String> TREATMENT_WORDS = List.of("form", "purpose");

  /** What of her the form does not ask, and so may not lose. */
  private static final List<String> NOT_ASKED = List.of("lastWhelpedOn", "tests");

  private static final List<String> NOT_ASKED_OF_A_SEASON = List.of("litterSize", "pregnant");

  private FemaleForm() {}

  /**
   * The female; absent where something typed is wrong, which is then said.
   *
   * @param was what is known of her, for what the form does not ask
   */
  public static Node.@Nullable Members read(Typed typed, Node.@Nullable Members was, Texts texts) {
    Part part = new Part();
    if (!typed.has("name")) {
      typed.refuse("name", texts.say("fault.name-missing"));
    }
    TEXTS.forEach(name -> part.text(name, typed.value(name)));
    NUMBERS.forEach(name -> part.number(name, Amount.of(typed, name, false, texts)));
    LocalDate born = LocalTimes.day(typed, "bornOn", texts);
    part.text("bornOn", born == null ? null : born.toString());
    rows(part, EARLIER, typed, texts, EARLIER_DAYS, was);
    rows(part, TREATMENTS, typed, texts, TREATMENT_DAYS, was);
    if (!typed.isGood()) {
      return null;
    }
    Map<String, Node> fields = new LinkedHashMap<>();
    if (was != null && was.byKey().containsKey("id")) {
      fields.put("id", was.byKey().get("id"));
    }
    fields.putAll(part.members().byKey());
    if (was != null) {
      keep(fields, was, NOT_ASKED);
    }
    return new Node.Members(fields);
  }

  private static void keep(Map<String, Node> fields, Node.Members was, List<String> names) {
    for (String name : names) {
      Node node = was.byKey().get(name);
      if (node != null) {
        fields.put(name, node);
      }
    }
  }

  private static void rows(
      Part part,
      String list,
      Typed typed,
      Texts texts,
      List<String> days,
      Node.@Nullable Members was) {
    boolean kinds = list.equals(TREATMENTS);
    List<Node> rows = new ArrayList<>();
    for (int i = 0; typed.hasRow(list, i); i++) {
      Part row = new Part();
      String prefix = list + "-" + i + "-";
      for (String day : days) {
        LocalDate on = LocalTimes.day(typed, prefix + day, texts);
        row.text(day, on == null ? null : on.toString());
      }
      row.text("kind", typed.value(prefix + "kind"));
      if (kinds) {
        TREATMENT_WORDS.forEach(word -> row.text(word, typed.value(prefix + word)));
      }
      if (!row.isEmpty()) {
        if (!row.members().byKey().containsKey(days.get(0))) {
          typed.refuse(prefix + days.get(0), texts.say("fault.day-missing"));
        }
        if (kinds && !typed.has(prefix + "kind")) {
          typed.refuse(prefix + "kind", texts.say("choose.treatment"));
        }
        rows.add(was == null || kinds ? row.members() : asBefore(row.members(), was));
      }
    }
    if (!rows.isEmpty()) {
      part.node(list, new Node.Entries(rows));
    }
  }

  /** An earlier season with what was known of it beside its days. */
  private static Node asBefore(Node.Members season, Node.Members was) {
    Map<String, Node> fields = new LinkedHashMap<>(season.byKey());
    Node first = fields.get(EARLIER_DAYS.get(0));
    for (Node.Members before : was.objects(EARLIER)) {
      if (first != null && first.equals(before.byKey().get(EARLIER_DAYS.get(0)))) {
        keep(fields, before, NOT_ASKED_OF_A_SEASON);
      }
    }
    return new Node.Members(fields);
  }

  /** A form filled in with what is known of her. */
  public static Typed filled(Node.Members female) {
    Typed typed = Typed.nothing();
    female
        .byKey()
        .forEach(
            (name, node) -> {
              if (node instanceof Node.Text text) {
                typed.fill(name, text.value());
              } else if (node instanceof Node.Digits digits) {
                typed.fill(name, digits.written());
              } else if (node instanceof Node.Entries entries) {
                fillRows(typed, name, entries);
              }
            });
    return typed;
  }

  private static void fillRows(Typed typed, String list, Node.Entries entries) {
    for (int i = 0; i < entries.all().size(); i++) {
      String prefix = list + "-" + i + "-";
      if (entries.all().get(i) instanceof Node.Members row) {
        row.byKey()
            .forEach(
                (name, node) -> {
                  if (node instanceof Node.Text text) {
                    typed.fill(prefix + name, text.value());
                  }
                });
      }
    }
  }
}
