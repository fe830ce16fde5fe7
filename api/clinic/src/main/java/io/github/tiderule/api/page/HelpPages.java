package io.github.tiderule.api.page;

import io.github.tiderule.api.page.frame.Frame;
import io.github.tiderule.api.page.frame.Templates;
import io.github.tiderule.api.service.http.Answer;
import io.github.tiderule.api.service.http.Call;
import io.github.tiderule.api.service.http.Route;
import io.github.tiderule.api.words.Texts;
import java.util.List;
import java.util.Locale;

/** What the words mean. */
public final class HelpPages {

  /** The terms explained, each by the texts {@code term.NAME} and {@code term.NAME.meaning}. */
  static final List<String> TERMS =
      List.of(
          "season",
          "first-blood",
          "progesterone",
          "unit",
          "method",
          "lh",
          "smear",
          "vaginoscopy",
          "standing",
          "ovulation",
          "egg-share",
          "verdict",
          "in-ten",
          "order-by",
          "semen",
          "route",
          "curve",
          "what-if",
          "caution");

  private HelpPages() {}

  /** The glossary. */
  public record Help(Frame frame, List<String> terms) {}

  static List<Route> all() {
    return List.of(Route.page(Route.Method.GET, "/help", Route.Need.NOBODY, HelpPages::help));
  }

  private static Answer help(Call call) {
    String title = Texts.ofPages(Locale.ROOT).say("help.title");
    return Templates.page("help", new Help(Frame.of(call, title), TERMS));
  }
}
