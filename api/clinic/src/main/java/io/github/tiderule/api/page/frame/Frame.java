package io.github.tiderule.api.page.frame;

import io.github.tiderule.api.access.Person;
import io.github.tiderule.api.access.Role;
import io.github.tiderule.api.access.Sessions;
import io.github.tiderule.api.service.http.Call;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.api.words.Words;
import java.util.Locale;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What stands around every page.
 *
 * @param title what the page is, for its heading and the browser's tab
 * @param person the name of who is signed in; absent where nobody needs to
 * @param csrf the token forms must carry; empty where none is needed
 * @param notice what was just done, to be read out; absent where nothing was
 */
public record Frame(
    Texts texts,
    Words words,
    String title,
    @Nullable String person,
    boolean isVet,
    String csrf,
    @Nullable String notice) {

  /** For the page that answers a request. */
  public static Frame of(Call call, String title) {
    Texts texts = Texts.ofPages(Locale.ROOT);
    Sessions.Session session = call.caller().session();
    Person known = call.caller().known();
    String done = call.query("done").orElse("");
    return new Frame(
        texts,
        Words.ofHeader(call.header("Accept-Language").orElse("")),
        title,
        session == null || known == null ? null : known.name(),
        known != null && known.role() == Role.VET,
        session == null ? "" : session.csrf(),
        texts.has("done." + done) ? texts.say("done." + done) : null);
  }

  /** The same around a page with the title of that name. */
  public Frame titled(String key, Object... parts) {
    return new Frame(texts, words, say(key, parts), person, isVet, csrf, notice);
  }

  /** A text. */
  public String say(String key, Object... parts) {
    return texts.say(key, parts);
  }

  /** The text of a word of the wire. */
  public String word(String family, String word) {
    return texts.word(family, word);
  }

  /** A key for one form, so that one sent twice is carried out once. */
  public String freshKey() {
    return UUID.randomUUID().toString();
  }

  /** Where a file of {@link Assets} is. */
  public String asset(String name) {
    return Assets.path(name);
  }
}
