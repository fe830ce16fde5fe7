package io.github.tiderule.api.words;

import io.github.tiderule.rules.fact.Worded;
import io.github.tiderule.rules.sentence.Sentence;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Map;
import java.util.MissingResourceException;
import java.util.Objects;
import java.util.Properties;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;

/**
 * What is said to people, by name, as it stands in one file for the pages and one for reports,
 * pictures and paper. Places in a text are {@code {0}}, {@code {1}} and so on; quotes stand for
 * themselves. Another language is a file beside the English one, such as {@code
 * page_de.properties}; what it leaves out is said in English.
 *
 * <p>The files are read by hand and not as resource bundles, which would cost a short command line
 * more time than all it says.
 */
public final class Texts {

  private static final String PAGES = "page";
  private static final String REPORTS = "reports";
  private static final Map<String, Texts> READ = new ConcurrentHashMap<>();

  private final Map<String, String> texts;

  private Texts(Map<String, String> texts) {
    this.texts = texts;
  }

  /** What the pages say, in a language; in English where there is nothing in it. */
  public static Texts ofPages(Locale locale) {
    String own = PAGES + "_" + locale.getLanguage();
    return of(Texts.class.getResource(own + ".properties") == null ? PAGES : own);
  }

  /** What reports, pictures and paper say, in English as the sentences of the rules they quote. */
  public static Texts ofReports() {
    return of(REPORTS);
  }

  private static Texts of(String name) {
    return READ.computeIfAbsent(name, Texts::read);
  }

  private static Texts read(String name) {
    int language = name.indexOf('_');
    Properties texts = new Properties();
    if (language > 0) {
      load(texts, name.substring(0, language));
    }
    load(texts, name);
    return new Texts(
        texts.stringPropertyNames().stream()
            .collect(Collectors.toUnmodifiableMap(key -> key, texts::getProperty)));
  }

  private static void load(Properties texts, String name) {
    String file = name + ".properties";
    try (InputStream in = Texts.class.getResourceAsStream(file)) {
      texts.load(new InputStreamReader(Objects.requireNonNull(in, file), StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * A text. What is filled in stands as it is, even where it looks like a place.
   *
   * @throws MissingResourceException if there is none of that name
   * @throws IllegalArgumentException if a sentence is filled in that nobody has told yet
   */
  public String say(String key, Object... parts) {
    String text = texts.get(key);
    if (text == null) {
      throw new MissingResourceException("no text " + key, Texts.class.getName(), key);
    }
    StringBuilder said = new StringBuilder(text.length());
    int at = 0;
    for (int open = text.indexOf('{'); open >= 0; open = text.indexOf('{', open + 1)) {
      int place =
          open + 2 < text.length() && text.charAt(open + 2) == '}'
              ? text.charAt(open + 1) - '0'
              : -1;
      if (place >= 0 && place < parts.length) {
        if (parts[place] instanceof Sentence untold) {
          throw new IllegalArgumentException("told to nobody: " + untold.template());
        }
        said.append(text, at, open)
            .append(parts[place] instanceof Worded known ? known.word() : parts[place]);
        at = open + 3;
      }
    }
    return said.append(text, at, text.length()).toString();
  }

  /**
   * The text of a word of the wire, which is named {@code FAMILY.WORD}; the word itself in plain
   * letters where there is none, since a word too new for the texts must not cost the page.
   */
  public String word(String family, String word) {
    String key = family + "." + word;
    return has(key) ? say(key) : word.replace('-', ' ').replace('_', ' ').strip();
  }

  /** The text of a word of the wire. */
  public String word(String family, Worded word) {
    return word(family, word.word());
  }

  /** One of two texts, for one thing or for several; the number is the first part. */
  public String count(String key, long number) {
    return say(number == 1 ? key + ".one" : key + ".many", number);
  }

  /** Whether there is a text of that name. */
  public boolean has(String key) {
    return texts.containsKey(key);
  }

  /** The names of all texts. */
  public Set<String> keys() {
    return texts.keySet();
  }
}
