package io.github.tiderule.api.page.form;

import io.github.tiderule.api.words.Texts;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A value as a laboratory reports it: a number, perhaps pasted with its unit, and whether it lies
 * below or above a limit, which is tapped since keyboards for numbers have no sign for it.
 *
 * @param comparator {@code <} or {@code >}; absent where it is a number
 */
record Reported(Amount amount, @Nullable String comparator) {

  /** The words of the field that says it. */
  static final List<String> LIMITS = List.of("below", "equal", "above");

  private static final Pattern WITH_UNIT =
      Pattern.compile(
          "(.*?\\d)\\s*(?:(ng\\s*/\\s*ml)|(nmol\\s*/\\s*l)|([\u00b5\u03bcu]g\\s*/\\s*l))\\.?",
          Pattern.CASE_INSENSITIVE);
  private static final List<String> UNITS = List.of("ng/mL", "nmol/L", "ug/L");
  private static final Map<String, String> SIGNS = Map.of("below", "<", "above", ">");

  /**
   * The value in a field; absent where it is empty or cannot be read, which is then said. A unit
   * behind the number becomes the one that is chosen, where none is.
   */
  static @Nullable Reported of(Typed typed, String name, Texts texts) {
    takeUnit(typed, name, texts);
    Amount amount = Amount.of(typed, name, true, texts);
    if (amount == null) {
      return null;
    }
    String tapped = SIGNS.get(typed.value("limit"));
    String written = amount.comparator();
    if (written != null && tapped != null && !written.equals(tapped)) {
      typed.refuse("limit", texts.say("fault.limit", written, tapped));
    }
    return new Reported(amount, written == null ? tapped : written);
  }

  private static void takeUnit(Typed typed, String name, Texts texts) {
    Matcher pasted = WITH_UNIT.matcher(typed.value(name));
    if (!pasted.matches()) {
      return;
    }
    for (int i = 0; i < UNITS.size(); i++) {
      if (pasted.group(i + 2) != null) {
        String unit = UNITS.get(i);
        typed.fill(name, pasted.group(1));
        if (!typed.has("unit")) {
          typed.fill("unit", unit);
        } else if (!typed.value("unit").equals(unit)) {
          typed.refuse(
              "unit",
              texts.say(
                  "fault.unit-contradicts",
                  texts.word("unit", unit),
                  texts.word("unit", typed.value("unit"))));
        }
      }
    }
  }

  /** The word of the field for a comparator. */
  static String limit(String comparator) {
    return comparator.equals("<") ? "below" : "above";
  }
}
