package io.github.tiderule.rules.sentence;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A template taken apart.
 *
 * @param words the words before, between and behind the places: one more than there are places
 */
public record Template(List<String> words, List<Place> places) {

  /** A number with a point or with commas between thousands, as an English template has it. */
  private static final Pattern NUMERAL =
      Pattern.compile(
          "(?<![\\w.,])\\d{1,3}(?:,\\d{3})+(?![\\w,])|(?<![\\w.,])(?<![A-Za-z]-)\\d+\\.\\d+(?![\\w]|\\.\\d)");

  private static final Map<String, Template> READ = new ConcurrentHashMap<>();

  /**
   * A place of a template.
   *
   * @param name the id of the parameter it takes; empty for the next thing that is told of
   * @param forms how it is written
   */
  public record Place(String name, List<String> forms) {}

  public Template {
    words = List.copyOf(words);
    places = List.copyOf(places);
  }

  /**
   * A template taken apart; each is read once.
   *
   * @throws IllegalArgumentException if a brace is left open or a form is not known
   */
  public static Template of(String text) {
    Template known = READ.get(text);
    if (known != null) {
      return known;
    }
    Template read = read(text);
    READ.put(text, read);
    return read;
  }

  /** The words with the numbers that stand among them in other marks. */
  List<String> words(Marks marks) {
    return marks.equals(Marks.PLAIN)
        ? words
        : words.stream()
            .map(
                piece ->
                    NUMERAL
                        .matcher(piece)
                        .replaceAll(found -> Matcher.quoteReplacement(marks.of(found.group()))))
            .toList();
  }

  private static Template read(String text) {
    List<String> words = new ArrayList<>();
    List<Place> places = new ArrayList<>();
    int from = 0;
    for (int open = text.indexOf('{'); open >= 0; open = text.indexOf('{', from)) {
      int close = text.indexOf('}', open);
      if (close < 0) {
        throw new IllegalArgumentException("a brace is left open in: " + text);
      }
      words.add(text.substring(from, open));
      String[] steps = text.substring(open + 1, close).split(":", -1);
      places.add(new Place(steps[0], forms(steps, text)));
      from = close + 1;
    }
    words.add(text.substring(from));
    return new Template(words, places);
  }

  private static List<String> forms(String[] steps, String text) {
    List<String> forms = List.of(steps).subList(1, steps.length);
    for (String form : forms) {
      if (!NumberForm.isKnown(form)) {
        throw new IllegalArgumentException("no form " + form + " is known: " + text);
      }
    }
    return forms;
  }
}
