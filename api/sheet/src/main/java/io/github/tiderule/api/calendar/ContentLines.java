package io.github.tiderule.api.calendar;

import java.nio.charset.StandardCharsets;

/**
 * Folds the content lines of a calendar as RFC 5545, section 3.1, wants them: no line is longer
 * than 75 octets of UTF-8 without its line break, and no character is split.
 */
final class ContentLines {

  private static final int MOST_OCTETS = 75;
  private static final String LINE_END = "\r\n";

  private ContentLines() {}

  /**
   * Folds a text.
   *
   * @param unfolded whole lines, each ended by CR and LF
   */
  static String folded(String unfolded) {
    StringBuilder folded = new StringBuilder(unfolded.length() + unfolded.length() / 16);
    int from = 0;
    for (int end = unfolded.indexOf(LINE_END); end >= 0; end = unfolded.indexOf(LINE_END, from)) {
      fold(unfolded.substring(from, end), folded);
      from = end + LINE_END.length();
    }
    return folded.append(unfolded, from, unfolded.length()).toString();
  }

  private static void fold(String line, StringBuilder into) {
    int room = MOST_OCTETS;
    int from = 0;
    while (octets(line, from) > room) {
      int end = end(line, from, room);
      into.append(line, from, end).append(LINE_END).append(' ');
      from = end;
      // the space that marks what follows is part of its line
      room = MOST_OCTETS - 1;
    }
    into.append(line, from, line.length()).append(LINE_END);
  }

  private static int octets(String line, int from) {
    return line.substring(from).getBytes(StandardCharsets.UTF_8).length;
  }

  /**
   * Where to break a line. Not before white space, since some readers take that away with the mark,
   * unless there is nothing else.
   */
  private static int end(String line, int from, int room) {
    int most = from;
    int octets = 0;
    while (true) {
      int character = line.codePointAt(most);
      octets += Character.toString(character).getBytes(StandardCharsets.UTF_8).length;
      if (octets > room) {
        break;
      }
      most += Character.charCount(character);
    }
    int end = most;
    while (end > from && Character.isWhitespace(line.charAt(end))) {
      end--;
    }
    return end > from ? end : most;
  }
}
