package io.github.tiderule.api.page.frame;

import io.github.tiderule.api.page.plan.Documents;
import io.github.tiderule.api.record.Cycle;
import io.github.tiderule.api.record.Female;
import io.github.tiderule.api.service.http.Call;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.api.words.Words;
import java.time.ZoneId;
import java.util.Locale;

/**
 * Whose season a page is about.
 *
 * @param female her key
 * @param season the season's key
 * @param mayEnter whether who looks may also write
 */
public record Who(
    String female,
    String season,
    String name,
    boolean invented,
    String firstBlood,
    ZoneId zone,
    boolean mayEnter) {

  /** What marks a female that does not exist, in her name. */
  public static final String INVENTED = "(invented)";

  /** About a season of hers, for who asks. */
  public static Who of(Call call, Female female, Cycle cycle) {
    Texts texts = Texts.ofPages(Locale.ROOT);
    Words words = Words.ofHeader(call.header("Accept-Language").orElse(""));
    String name = Documents.name(female, texts);
    return new Who(
        female.key(),
        cycle.key(),
        name,
        name.contains(INVENTED),
        Documents.firstBlood(cycle, texts, words),
        Documents.zone(cycle),
        call.person().mayEnter(female));
  }

  /** The path of the season's page. */
  public String path() {
    return "/seasons/" + season;
  }
}
