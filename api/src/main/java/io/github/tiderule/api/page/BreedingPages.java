package io.github.tiderule.api.page;

import io.github.tiderule.api.node.Node;
import io.github.tiderule.api.page.form.BreedingForm;
import io.github.tiderule.api.page.form.Typed;
import io.github.tiderule.api.page.plan.Documents;
import io.github.tiderule.api.page.words.Texts;
import io.github.tiderule.api.service.Answer;
import io.github.tiderule.api.service.Call;
import io.github.tiderule.api.service.Known;
import io.github.tiderule.api.service.Recording;
import io.github.tiderule.api.service.Route;
import java.util.List;
import java.util.Locale;

/** How she is to be bred: the semen, its order, when it is to be had, the laboratory's hours. */
public final class BreedingPages {

  private static final String PATH = SeasonPages.ONE + "/breeding";
  private static final int UNFIT = 422;

  private BreedingPages() {}

  /** The form. */
  public record Form(Frame frame, Who who, Typed typed) {}

  static List<Route> all() {
    return List.of(
        Route.page(Route.Method.GET, PATH, Route.Need.WRITER, BreedingPages::show),
        Route.page(Route.Method.POST, PATH, Route.Need.WRITER, BreedingPages::change));
  }

  private static BreedingForm fields(Known.Season season) {
    return BreedingForm.of(Documents.zone(season.cycle()), Texts.in(Locale.ROOT));
  }

  private static Answer form(Call call, int status, Known.Season season, Typed typed) {
    Who who = Who.of(call, season.female(), season.cycle());
    return Templates.page(
        status,
        "breeding",
        new Form(Frame.of(call, "").titled("breeding.title", who.name()), who, typed));
  }

  private static Answer show(Call call) {
    return call.read(
        ledger -> {
          Known known = new Known(call, ledger);
          Known.Season season = known.season();
          known.mustEnter(season.female());
          Typed typed =
              fields(season)
                  .filled(Documents.of(season.cycle().document()))
                  .fill("was", Integer.toString(season.cycle().version()));
          return form(call, 200, season, typed);
        });
  }

  private static Answer change(Call call) {
    Typed typed = Typed.of(call.form());
    Answer answer =
        Forms.save(
            call,
            typed,
            ledger -> {
              Known known = new Known(call, ledger);
              Known.Season season = known.season();
              known.mustEnter(season.female());
              Node.Members said =
                  fields(season).read(typed, Documents.of(season.cycle().document()));
              if (said == null) {
                return null;
              }
              Forms.mustMatch(typed, season.cycle().version());
              Recording.of(call, ledger).changeSeason(season, said, season.cycle().asOf());
              return Answer.seeOther("/seasons/" + season.cycle().key() + "?done=changed");
            },
            ledger -> form(call, UNFIT, new Known(call, ledger).season(), typed));
    SeasonPages.keepPlanAfter(call, answer);
    return answer;
  }
}
