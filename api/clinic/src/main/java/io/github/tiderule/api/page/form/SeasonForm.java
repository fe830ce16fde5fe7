package io.github.tiderule.api.page.form;

import io.github.tiderule.api.words.Texts;
import io.github.tiderule.format.node.Node;
import java.time.LocalDate;
import java.time.zone.ZoneRulesProvider;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** When a season began and where, as a form. */
public final class SeasonForm {

  private SeasonForm() {}

  /**
   * The season's document; absent where something typed is wrong, which is then said.
   *
   * @param was the document so far, for what the form does not ask
   */
  public static Node.@Nullable Members read(Typed typed, Node.@Nullable Members was, Texts texts) {
    String zone = typed.value("zone");
    if (!ZoneRulesProvider.getAvailableZoneIds().contains(zone)) {
      typed.refuse("zone", texts.say("fault.zone", zone));
    }
    String certainty = typed.value("certainty");
    LocalDate on = LocalTimes.day(typed, "on", texts);
    if (certainty.isEmpty()) {
      typed.refuse("certainty", texts.say("choose.certainty"));
    } else if (on == null && !certainty.equals("unknown")) {
      typed.refuse("on", texts.say("fault.blood-missing"));
    }
    if (!typed.isGood()) {
      return null;
    }
    Map<String, Node> fields = new LinkedHashMap<>();
    if (was != null) {
      fields.putAll(was.byKey());
    }
    fields.put("zone", new Node.Text(zone));
    fields.put(
        "firstBlood",
        new Part()
            .text("on", on == null ? null : on.toString())
            .text("certainty", certainty)
            .members());
    return new Node.Members(fields);
  }

  /** A form filled in with a season's document. */
  public static Typed filled(Node.Members season) {
    Typed typed = Typed.nothing();
    if (season.byKey().get("zone") instanceof Node.Text zone) {
      typed.fill("zone", zone.value());
    }
    if (season.byKey().get("firstBlood") instanceof Node.Members blood) {
      blood
          .byKey()
          .forEach(
              (name, node) -> {
                if (node instanceof Node.Text text) {
                  typed.fill(name, text.value());
                }
              });
    }
    return typed;
  }
}
