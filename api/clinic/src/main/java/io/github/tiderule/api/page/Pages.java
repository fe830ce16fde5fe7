package io.github.tiderule.api.page;

import io.github.tiderule.api.page.frame.Assets;
import io.github.tiderule.api.page.frame.Frame;
import io.github.tiderule.api.page.frame.Templates;
import io.github.tiderule.api.service.http.Answer;
import io.github.tiderule.api.service.http.Call;
import io.github.tiderule.api.service.http.Refusal;
import io.github.tiderule.api.service.http.Route;
import io.github.tiderule.api.service.http.Site;
import io.github.tiderule.api.words.Texts;
import java.util.List;
import java.util.stream.Stream;

/** All pages there are. */
public final class Pages implements Site {

  private static final int NOT_SIGNED_IN = 401;

  private Pages() {}

  /** The site. */
  public static Site site() {
    return new Pages();
  }

  @Override
  public List<Route> routes() {
    return Stream.of(
            Assets.all(),
            SignInPages.all(),
            HelpPages.all(),
            GuidePages.all(),
            HomePages.all(),
            TimingPages.all(),
            KennelPages.all(),
            CalendarPages.all(),
            FemalePages.all(),
            SeasonPages.all(),
            LinkPages.all(),
            EntryPages.all(),
            CorrectionPages.all(),
            PartPages.all(),
            WhatIfPages.all(),
            PaperPages.all(),
            ReasoningPages.all(),
            RulePages.all())
        .flatMap(List::stream)
        .toList();
  }

  /**
   * What a person reads whose request is refused.
   *
   * @param title in a few words
   * @param text what is wrong and what to do
   */
  public record Refused(Frame frame, String title, String text) {}

  @Override
  public Answer refused(Call call, Refusal refusal) {
    if (refusal.status() == NOT_SIGNED_IN) {
      return SignInPages.wanted(call);
    }
    Texts texts = Texts.ofPages(java.util.Locale.ROOT);
    String key = "refused." + refusal.status();
    String title = texts.has(key) ? texts.say(key) : refusal.title();
    String text = texts.has(key + ".fix") ? texts.say(key + ".fix") : refusal.detail();
    return Templates.page(
        refusal.status(), "refused", new Refused(Frame.of(call, title), title, text));
  }
}
