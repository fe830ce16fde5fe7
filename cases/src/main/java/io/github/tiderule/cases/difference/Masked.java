package io.github.tiderule.cases.difference;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Texts without what differs between two programs or two runs though the answer is the same: the
 * hash of the rules, in full or cut short; on pages also keys of the record, names of assets, and
 * today.
 */
final class Masked {

  private static final String MASK = "…";
  private static final Pattern HASH = Pattern.compile("(?<=sha256:)[0-9a-f]{64}");
  private static final Pattern SHORT_HASH =
      Pattern.compile("(?<=\\brules\\s(?:sha256:)?)[0-9a-f]{12}\\b");
  private static final Pattern KEY =
      Pattern.compile("(?<![0-9a-z])01[0-9abcdefghjkmnpqrstvwxyz]{24}(?![0-9a-z])");
  private static final Pattern ASSET = Pattern.compile("(?<=/assets/)[0-9a-f]+");

  private final Pattern today;

  /** Masks of an hour in which both this day and its neighbours are today somewhere. */
  Masked(LocalDate day) {
    today =
        Pattern.compile(
            Stream.of(day.minusDays(1), day, day.plusDays(1))
                    .flatMap(
                        one ->
                            Stream.of("EEE d MMM uuuu", "d MMM uuuu", "EEE d MMM")
                                .map(form -> written(one, form)))
                    .map(Pattern::quote)
                    .collect(Collectors.joining("|", "(?:", ")(?:,? \\d\\d:\\d\\d)?"))
                + "|"
                + Stream.of(day.minusDays(1), day, day.plusDays(1))
                    .map(one -> one + "|" + written(one, "uuuuMMdd"))
                    .collect(
                        Collectors.joining("|", "(?:", ")(?:T[0-9:.]+(?:Z|[+-]\\d\\d:\\d\\d)?)?")));
  }

  /** Masks for a run that is going on. */
  static Masked today() {
    return new Masked(LocalDate.now(ZoneOffset.UTC));
  }

  private static String written(LocalDate day, String form) {
    return DateTimeFormatter.ofPattern(form, Locale.ENGLISH).format(day);
  }

  /** An answer to a file without the hashes. */
  static String text(String text) {
    return SHORT_HASH.matcher(HASH.matcher(text).replaceAll(MASK)).replaceAll(MASK);
  }

  /** An answer out of the record without what is new every run. */
  String page(String text) {
    String known = ASSET.matcher(KEY.matcher(text).replaceAll(MASK)).replaceAll(MASK);
    return today.matcher(text(known)).replaceAll(MASK);
  }
}
