package io.github.tiderule.api.page.form;

import io.github.tiderule.api.words.Texts;
import io.github.tiderule.engine.validation.Legibility;
import io.github.tiderule.format.node.Node;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * What is the same for every season of a kennel, as a form: the hours in which stud or clinic are
 * to be had, with the days they are closed, the courier, the laboratory and the way there. It fills
 * in the form of a season, where it is looked at before it is saved.
 */
public final class KennelForm {

  private static final String HOURS = "hours";
  private static final String CLOSED = "closedOn";

  /** Digits as a telephone takes them, with what people write between. */
  private static final Pattern PHONE = Pattern.compile("\\+?[0-9(][0-9 ()/.-]{2,30}");

  private static final int LONGEST_NAME = 80;

  /** Empty rows there are to fill in at once. */
  public static final int EMPTY_ROWS = 3;

  private final Texts texts;

  private KennelForm(Texts texts) {
    this.texts = texts;
  }

  /** With what is said of faults. */
  public static KennelForm of(Texts texts) {
    return new KennelForm(texts);
  }

  /** The document; absent where something typed is wrong, which is then said. */
  public Node.@Nullable Members read(Typed typed) {
    Part kennel =
        new Part()
            .part("order", BreedingForm.order(typed, texts))
            .number("travelHours", Amount.of(typed, "travelHours", false, texts))
            .part("laboratory", BreedingForm.laboratory(typed, texts))
            .part("vet", vet(typed))
            .part(HOURS, hours(typed))
            .texts(CLOSED, days(typed));
    return typed.isGood() ? kennel.members() : null;
  }

  private Part vet(Typed typed) {
    String name = typed.value("vetName").replaceAll("\\s+", " ");
    String phone = typed.value("vetPhone");
    if (!phone.isEmpty() && !PHONE.matcher(phone).matches()) {
      typed.refuse("vetPhone", texts.say("fault.phone"));
    } else if (phone.isEmpty() && !name.isEmpty()) {
      typed.refuse("vetPhone", texts.say("fault.phone-missing"));
    }
    if (name.length() > LONGEST_NAME) {
      typed.refuse("vetName", texts.say("fault.note-long", LONGEST_NAME));
    } else if (!name.codePoints().allMatch(Legibility::isSafe)) {
      typed.refuse("vetName", texts.say("problem.illegal-character"));
    }
    return new Part().text("name", name).text("phone", phone);
  }

  private Part hours(Typed typed) {
    Part hours = new Part();
    for (String day : Choices.WEEKDAYS) {
      String from = LocalTimes.clock(typed, HOURS + "-" + day + "-from", texts);
      String to = LocalTimes.clock(typed, HOURS + "-" + day + "-to", texts);
      if (from != null && to == null) {
        typed.refuse(
            HOURS + "-" + day + "-to", texts.say("fault.hours", texts.word("weekday", day)));
      } else if (from == null && to != null) {
        typed.refuse(
            HOURS + "-" + day + "-from", texts.say("fault.hours", texts.word("weekday", day)));
      } else if (from != null && to != null) {
        if (from.compareTo(to) >= 0) {
          typed.refuse(
              HOURS + "-" + day + "-to",
              texts.say("fault.hours-order", texts.word("weekday", day)));
        }
        hours.part(day, new Part().text("from", from).text("to", to));
      }
    }
    return hours;
  }

  private List<String> days(Typed typed) {
    List<String> days = new ArrayList<>();
    for (int i = 0; typed.hasRow(CLOSED, i); i++) {
      LocalDate day = LocalTimes.day(typed, CLOSED + "-" + i + "-on", texts);
      if (day != null) {
        days.add(day.toString());
      }
    }
    return days;
  }

  /** The form filled in with what is kept. */
  public Typed filled(Node.Members kennel) {
    Typed typed = Typed.nothing();
    BreedingForm.fillParts(typed, kennel);
    Node.Members vet = kennel.members("vet");
    if (vet != null) {
      typed.fill("vetName", vet.text("name")).fill("vetPhone", vet.text("phone"));
    }
    Node.Members hours = kennel.members(HOURS);
    if (hours != null) {
      hours
          .byKey()
          .forEach(
              (day, span) -> {
                if (span instanceof Node.Members ends) {
                  typed.fill(HOURS + "-" + day + "-from", ends.text("from"));
                  typed.fill(HOURS + "-" + day + "-to", ends.text("to"));
                }
              });
    }
    List<String> closed = closed(kennel);
    for (int i = 0; i < closed.size(); i++) {
      typed.fill(CLOSED + "-" + i + "-on", closed.get(i));
    }
    return typed;
  }

  private static List<String> closed(Node.Members kennel) {
    return kennel.entries(CLOSED).stream()
        .filter(Node.Text.class::isInstance)
        .map(day -> ((Node.Text) day).value())
        .toList();
  }

  /** Fills the form of a season in that says nothing of order, travel and laboratory yet. */
  public static void fillIn(Typed season, Node.Members kennel) {
    BreedingForm.fillParts(season, kennel);
  }

  /** Whether there are weekly hours. */
  public static boolean hasHours(Node.Members kennel) {
    return kennel.members(HOURS) != null;
  }

  /**
   * Writes the weekly hours out as the spans of a season's form, closed days left out.
   *
   * @param from the first day
   * @param days how many days
   */
  public static void writeOut(Typed season, Node.Members kennel, LocalDate from, int days) {
    Node.Members hours = kennel.members(HOURS);
    if (hours == null) {
      return;
    }
    List<String> closed = closed(kennel);
    int row = 0;
    for (int i = 0; i < days; i++) {
      LocalDate day = from.plusDays(i);
      Node.Members span = hours.members(DayOfWeek.from(day).name());
      if (span != null && !closed.contains(day.toString())) {
        season.fill("available-" + row + "-from", at(day, span.text("from")));
        season.fill("available-" + row + "-to", at(day, span.text("to")));
        row++;
      }
    }
    while (season.hasRow("available", row)) {
      season.fill("available-" + row + "-from", "").fill("available-" + row + "-to", "");
      row++;
    }
  }

  private static @Nullable String at(LocalDate day, @Nullable String clock) {
    return clock == null ? null : LocalDateTime.of(day, LocalTime.parse(clock)).toString();
  }
}
