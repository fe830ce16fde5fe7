package io.github.tiderule.rules.sentence;

/**
 * The marks numbers are written with.
 *
 * @param decimal between the whole and its parts
 * @param group between thousands
 */
public record Marks(char decimal, char group) {

  /** As in programs: {@code 1,500.5}. */
  public static final Marks PLAIN = new Marks('.', ',');

  /**
   * A number with these marks.
   *
   * @param number nothing but a number, written with a point and commas
   */
  public String of(String number) {
    if (equals(PLAIN)) {
      return number;
    }
    StringBuilder marked = new StringBuilder(number.length());
    for (int i = 0; i < number.length(); i++) {
      char one = number.charAt(i);
      marked.append(one == '.' ? decimal : one == ',' ? group : one);
    }
    return marked.toString();
  }
}
