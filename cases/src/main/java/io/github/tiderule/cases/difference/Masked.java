package io.github.tiderule.cases.difference;

import java.util.regex.Pattern;

/**
 * Texts without what differs between two programs or two runs though the answer is the same: the
 * hash of the rules, in full or cut short.
 */
final class Masked {

  private static final Pattern HASH = Pattern.compile("(?<=sha256:|sha256-)[0-9a-f]{12,64}");
  private static final Pattern SHORT_HASH = Pattern.compile("(?<=\\brules\\s)[0-9a-f]{12}\\b");

  private Masked() {}

  /** A text without them. */
  static String text(String text) {
    return SHORT_HASH.matcher(HASH.matcher(text).replaceAll("…")).replaceAll("…");
  }
}
