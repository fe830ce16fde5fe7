package io.github.tiderule.api.page.form;

import io.github.tiderule.api.words.Texts;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A number as people type it, with a comma or a point, and the sign a laboratory prints before a
 * limit.
 *
 * @param digits as JSON writes it
 * @param comparator {@code <} or {@code >}; absent where there is none
 */
record Amount(String digits, @Nullable String comparator) {

  private static final Pattern TYPED =
      Pattern.compile("([<>]?)\\s*(\\d{1,9})(?:([.,])(\\d{1,9}))?");
  private static final int THOUSAND_DIGITS = 3;

  /** Of a number that can be read in two ways, the name of the button that says which is meant. */
  private static final String READ = "read-";

  /**
   * The number in a field; absent where it is empty or cannot be read, which is then said.
   *
   * @param mayBeLimit whether it may stand below or above a limit
   */
  static @Nullable Amount of(Typed typed, String name, boolean mayBeLimit, Texts texts) {
    boolean chosen = typed.has(READ + name);
    String text = typed.value(chosen ? READ + name : name);
    if (text.isEmpty()) {
      return null;
    }
    Matcher matcher = TYPED.matcher(text);
    if (!matcher.matches()) {
      boolean negative = text.startsWith("-") || text.startsWith("−");
      typed.refuse(name, texts.say(negative ? "fault.negative" : "fault.number", text));
      return null;
    }
    String whole = matcher.group(2).replaceFirst("^0+(?=\\d)", "");
    String fraction = matcher.group(4);
    String comparator = matcher.group(1);
    if (!comparator.isEmpty() && !mayBeLimit) {
      typed.refuse(name, texts.say("fault.number", text));
      return null;
    }
    if (fraction == null) {
      return new Amount(whole, comparator.isEmpty() ? null : comparator);
    }
    if (fraction.length() == THOUSAND_DIGITS && !whole.equals("0") && !chosen) {
      typed.refuse(
          name,
          texts.say("fault.two-ways", text),
          List.of(comparator + whole + "." + fraction, comparator + whole + fraction));
      return null;
    }
    return new Amount(whole + "." + fraction, comparator.isEmpty() ? null : comparator);
  }
}
