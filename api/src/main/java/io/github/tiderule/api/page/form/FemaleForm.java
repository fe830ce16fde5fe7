package io.github.tiderule.api.page.form;

import io.github.tiderule.api.node.Node;
import io.github.tiderule.api.page.words.Texts;
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
    rows(part, "earlierCycles", typed, texts, "firstBloodOn", "ovulatedOn");
    rows(part, "treatments", typed, texts, "on", null);
    if (!typed.isGood()) {
      return null;
    }
    Map<String, Node> fields = new LinkedHashMap<>();
    if (was != null && was.byKey().containsKey("id")) {
      fields.put("id", was.byKey().get("id"));
    }
    fields.putAll(part.members().byKey());
    return new Node.Members(fields);
  }

  private static void rows(
      Part part, String list, Typed typed, Texts texts, String day, @Nullable String secondDay) {
    List<Node> rows = new ArrayList<>();
    for (int i = 0; typed.hasRow(list, i); i++) {
      Part row = new Part();
      String prefix = list + "-" + i + "-";
      LocalDate on = LocalTimes.day(typed, prefix + day, texts);
      row.text(day, on == null ? null : on.toString());
      if (secondDay != null) {
        LocalDate second = LocalTimes.day(typed, prefix + secondDay, texts);
        row.text(secondDay, second == null ? null : second.toString());
      } else {
        row.text("kind", typed.value(prefix + "kind"));
      }
      if (!row.isEmpty()) {
        if (on == null) {
          typed.refuse(prefix + day, texts.say("fault.day-missing"));
        }
        if (secondDay == null && !typed.has(prefix + "kind")) {
          typed.refuse(prefix + "kind", texts.say("fault.choose"));
        }
        rows.add(row.members());
      }
    }
    if (!rows.isEmpty()) {
      part.node(list, new Node.Entries(rows));
    }
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
