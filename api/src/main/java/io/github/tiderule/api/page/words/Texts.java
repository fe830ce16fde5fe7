package io.github.tiderule.api.page.words;

import java.util.Locale;
import java.util.MissingResourceException;
import java.util.ResourceBundle;
import java.util.Set;

/**
 * What the pages say, in the language of a bundle. Places in a text are {@code {0}}, {@code {1}}
 * and so on; quotes stand for themselves.
 */
public final class Texts {

  private static final String BUNDLE = "io.github.tiderule.api.page.texts";
  private static final ResourceBundle.Control NO_FALLBACK =
      ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES);

  private final ResourceBundle bundle;

  private Texts(ResourceBundle bundle) {
    this.bundle = bundle;
  }

  /** The texts in a language; in English where there are none in it. */
  public static Texts in(Locale locale) {
    return new Texts(ResourceBundle.getBundle(BUNDLE, locale, NO_FALLBACK));
  }

  /**
   * A text.
   *
   * @throws MissingResourceException if there is none of that name
   */
  public String say(String key, Object... parts) {
    String text = bundle.getString(key);
    for (int i = 0; i < parts.length; i++) {
      text = text.replace("{" + i + "}", String.valueOf(parts[i]));
    }
    return text;
  }

  /**
   * The text of a word of the wire, which is named {@code FAMILY.WORD}; the word itself in plain
   * letters where there is none, since a word too new for the texts must not cost the page.
   */
  public String word(String family, String word) {
    String key = family + "." + word;
    return has(key) ? say(key) : word.replace('-', ' ').replace('_', ' ').strip();
  }

  /** One of two texts, for one thing or for several; the number is the first part. */
  public String count(String key, long number) {
    return say(number == 1 ? key + ".one" : key + ".many", number);
  }

  /** Whether there is a text of that name. */
  public boolean has(String key) {
    return bundle.containsKey(key);
  }

  /** The names of all texts. */
  public Set<String> keys() {
    return bundle.keySet();
  }
}
