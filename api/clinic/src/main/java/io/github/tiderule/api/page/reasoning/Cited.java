package io.github.tiderule.api.page.reasoning;

import io.github.tiderule.api.report.TraceReport;
import io.github.tiderule.rules.source.Source;
import io.github.tiderule.rules.source.Sources;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A source as a conclusion names it.
 *
 * @param brief who wrote it and when, or what it is where nobody published it
 * @param readAs how it was read
 * @param citation in full
 */
public record Cited(String key, String brief, String readAs, String citation) {

  private static final Pattern YEAR = Pattern.compile("-(\\d{4})[a-z]?$");
  private static final String END = ". ";
  private static final int MOST_AUTHORS = 2;
  private static final int LONGEST = 40;

  /** A source; one that is not in the list says so. */
  static Cited of(String key, Sources sources) {
    if (!sources.contains(key)) {
      return new Cited(key, key, TraceReport.NOT_LISTED, key);
    }
    Source source = sources.get(key);
    return new Cited(key, brief(source), source.readAs(), source.citation());
  }

  /** Several, in their order. */
  public static List<Cited> all(List<String> keys, Sources sources) {
    return keys.stream().distinct().map(key -> of(key, sources)).toList();
  }

  /** Whether how it was read is not said by its name already. */
  public boolean saysHow() {
    return !brief.equals(readAs);
  }

  /** Who wrote it and when; the words of its key where that would be a whole sentence. */
  private static String brief(Source source) {
    int end = source.citation().indexOf(END);
    String[] authors =
        (end < 0 ? source.citation() : source.citation().substring(0, end)).split(", ");
    String who = authors.length > MOST_AUTHORS ? authors[0] + " et al" : String.join(", ", authors);
    if (who.length() > LONGEST) {
      return source.key().replace('-', ' ');
    }
    Matcher year = YEAR.matcher(source.key());
    return year.find() && !who.contains(year.group(1)) ? who + " " + year.group(1) : who;
  }
}
