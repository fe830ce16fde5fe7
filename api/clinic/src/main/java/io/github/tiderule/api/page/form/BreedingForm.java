package io.github.tiderule.api.page.form;

import io.github.tiderule.api.words.Texts;
import io.github.tiderule.format.node.Node;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** What she is to be bred with, when it is to be had, and when the laboratory works, as a form. */
public final class BreedingForm implements PartForm {

  /** How many spans and days there are to fill in. */
  public static final int ROWS = 3;

  private static final String MILLION = "000000";

  private final ZoneId zone;
  private final Texts texts;

  private BreedingForm(ZoneId zone, Texts texts) {
    this.zone = zone;
    this.texts = texts;
  }

  /** For where she is. */
  public static BreedingForm of(ZoneId zone, Texts texts) {
    return new BreedingForm(zone, texts);
  }

  @Override
  public Node.@Nullable Members read(Typed typed, Node.Members was) {
    Part breeding =
        new Part()
            .text("semen", typed.value("semen"))
            .text("route", typed.value("route"))
            .number("doses", number(typed, "doses"))
            .number("hoursBetween", number(typed, "hoursBetween"))
            .number("chilledAgeHours", number(typed, "chilledAgeHours"))
            .part("dose", dose(typed))
            .part("order", order(typed, texts))
            .number("travelHours", number(typed, "travelHours"));
    available(typed, breeding);
    if (!breeding.isEmpty() && !typed.has("semen")) {
      typed.refuse("semen", texts.say("choose.semen"));
    }
    Part laboratory = laboratory(typed, texts);
    if (!typed.isGood()) {
      return null;
    }
    return PartForm.with(PartForm.with(was, "breeding", breeding), "laboratory", laboratory);
  }

  private @Nullable Amount number(Typed typed, String name) {
    return Amount.of(typed, name, false, texts);
  }

  /** When the laboratory works. */
  static Part laboratory(Typed typed, Texts texts) {
    Part laboratory =
        new Part()
            .number("turnaroundHours", Amount.of(typed, "turnaroundHours", false, texts))
            .texts("opensOn", typed.all("opensOn"));
    if (typed.has("reachable")) {
      laboratory.flag("reachable", typed.value("reachable").equals("yes"));
    }
    return laboratory;
  }

  private Part dose(Typed typed) {
    Amount millions = number(typed, "totalSperm");
    return new Part()
        .number("totalSperm", millions == null ? null : whole(millions.digits()))
        .number("progressivelyMotilePercent", number(typed, "progressivelyMotilePercent"))
        .number("normalPercent", number(typed, "normalPercent"));
  }

  private static String whole(String millions) {
    return new java.math.BigDecimal(millions)
        .scaleByPowerOfTen(MILLION.length())
        .toBigInteger()
        .toString();
  }

  /** When is ordered and delivered. */
  static Part order(Typed typed, Texts texts) {
    List<String> holidays = new ArrayList<>();
    for (int i = 0; typed.hasRow("holidays", i); i++) {
      LocalDate day = LocalTimes.day(typed, "holidays-" + i + "-on", texts);
      if (day != null) {
        holidays.add(day.toString());
      }
    }
    return new Part()
        .text("cutOff", LocalTimes.clock(typed, "cutOff", texts))
        .number("transitHours", Amount.of(typed, "transitHours", false, texts))
        .texts("noDeliveryOn", typed.all("noDeliveryOn"))
        .texts("holidays", holidays)
        .texts("collectionOn", typed.all("collectionOn"));
  }

  private void available(Typed typed, Part breeding) {
    List<Node> spans = new ArrayList<>();
    for (int i = 0; typed.hasRow("available", i); i++) {
      String prefix = "available-" + i + "-";
      String from = LocalTimes.moment(typed, prefix + "from", zone, texts);
      String to = LocalTimes.moment(typed, prefix + "to", zone, texts);
      if (from != null && to == null) {
        typed.refuse(prefix + "to", texts.say("fault.span"));
      } else if (from == null && to != null) {
        typed.refuse(prefix + "from", texts.say("fault.span"));
      } else if (from != null) {
        spans.add(new Part().text("from", from).text("to", to).members());
      }
    }
    if (!spans.isEmpty()) {
      breeding.node("available", new Node.Entries(spans));
    }
  }

  @Override
  public Typed filled(Node.Members season) {
    Typed typed = Typed.nothing();
    fill(typed, season.byKey().get("breeding"));
    fill(typed, season.byKey().get("laboratory"));
    return typed;
  }

  /** Fills in what a season and its kennel both have: order, travel and laboratory. */
  static void fillParts(Typed typed, Node.Members kennel) {
    BreedingForm anywhere = new BreedingForm(ZoneOffset.UTC, Texts.ofPages(Locale.ROOT));
    anywhere.fill(typed, kennel.byKey().get("order"));
    anywhere.fill(typed, kennel.byKey().get("laboratory"));
    if (kennel.byKey().get("travelHours") instanceof Node.Digits hours) {
      typed.fill("travelHours", hours.written());
    }
  }

  private void fill(Typed typed, @Nullable Node node) {
    if (!(node instanceof Node.Members members)) {
      return;
    }
    members
        .byKey()
        .forEach(
            (name, field) -> {
              if (field instanceof Node.Text text) {
                typed.fill(name, text.value());
              } else if (field instanceof Node.Flag flag) {
                typed.fill(name, flag.value() ? "yes" : "no");
              } else if (field instanceof Node.Digits digits) {
                typed.fill(name, name.equals("totalSperm") ? inMillions(digits) : digits.written());
              } else if (field instanceof Node.Members inside) {
                fill(typed, inside);
              } else if (field instanceof Node.Entries entries) {
                fill(typed, name, entries);
              }
            });
  }

  private static String inMillions(Node.Digits digits) {
    return new java.math.BigDecimal(digits.written())
        .scaleByPowerOfTen(-MILLION.length())
        .stripTrailingZeros()
        .toPlainString();
  }

  private void fill(Typed typed, String name, Node.Entries entries) {
    List<String> words = new ArrayList<>();
    for (int i = 0; i < entries.all().size(); i++) {
      Node entry = entries.all().get(i);
      if (entry instanceof Node.Text text) {
        words.add(text.value());
        typed.fill(name + "-" + i + "-on", text.value());
      } else if (entry instanceof Node.Members span) {
        for (String end : List.of("from", "to")) {
          if (span.byKey().get(end) instanceof Node.Text text) {
            typed.fill(name + "-" + i + "-" + end, LocalTimes.shown(text.value(), zone));
          }
        }
      }
    }
    typed.fill(name, words);
  }
}
