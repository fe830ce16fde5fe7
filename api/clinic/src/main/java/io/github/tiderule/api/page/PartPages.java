package io.github.tiderule.api.page;

import io.github.tiderule.api.page.form.BreedingForm;
import io.github.tiderule.api.page.form.KennelForm;
import io.github.tiderule.api.page.form.OutcomeForm;
import io.github.tiderule.api.page.form.PartForm;
import io.github.tiderule.api.page.form.SemenForm;
import io.github.tiderule.api.page.form.Typed;
import io.github.tiderule.api.page.frame.Forms;
import io.github.tiderule.api.page.frame.Frame;
import io.github.tiderule.api.page.frame.Templates;
import io.github.tiderule.api.page.frame.Who;
import io.github.tiderule.api.page.plan.Documents;
import io.github.tiderule.api.record.Ledger;
import io.github.tiderule.api.service.Known;
import io.github.tiderule.api.service.Recording;
import io.github.tiderule.api.service.http.Answer;
import io.github.tiderule.api.service.http.Call;
import io.github.tiderule.api.service.http.Route;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.format.node.Node;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.function.BiFunction;
import java.util.stream.Stream;

/**
 * Parts of a season beside its observations: how she is to be bred, the semen in hand, and what
 * became of her. Each has a form, and saving it is a revision of the season.
 */
public final class PartPages {

  private static final int UNFIT = 422;

  /** Weekly hours are written out for as many days from first blood. */
  private static final int DAYS_OF_SEASON = 45;

  /** Last step of the path, and name of the template. */
  private final String name;

  private final String title;
  private final BiFunction<ZoneId, Texts, PartForm> form;

  /** Whether the kennel fills it in. */
  private final boolean ofKennel;

  private PartPages(
      String name, String title, BiFunction<ZoneId, Texts, PartForm> form, boolean ofKennel) {
    this.name = name;
    this.title = title;
    this.form = form;
    this.ofKennel = ofKennel;
  }

  /**
   * The form.
   *
   * @param weekly whether the kennel has weekly hours to take
   */
  public record Form(Frame frame, Who who, Typed typed, boolean weekly) {}

  static List<Route> all() {
    return Stream.of(
            new PartPages("breeding", "breeding.title", BreedingForm::of, true),
            new PartPages("semen", "semen.title", SemenForm::of, false),
            new PartPages(
                "outcome", "outcome.title", (zone, texts) -> OutcomeForm.of(texts), false))
        .flatMap(one -> one.routes().stream())
        .toList();
  }

  private List<Route> routes() {
    String path = SeasonPages.ONE + "/" + name;
    return List.of(
        Route.page(Route.Method.GET, path, Route.Need.WRITER, this::show),
        Route.page(Route.Method.POST, path, Route.Need.WRITER, this::change));
  }

  private PartForm fields(Known.Season season) {
    return form.apply(Documents.zone(season.cycle()), Texts.ofPages(Locale.ROOT));
  }

  private Answer page(Call call, Ledger ledger, int status, Known.Season season, Typed typed) {
    Who who = Who.of(call, season.female(), season.cycle());
    return Templates.page(
        status,
        name,
        new Form(
            Frame.of(call, "").titled(title, who.name()),
            who,
            typed,
            ofKennel && KennelForm.hasHours(KennelPages.of(call, ledger))));
  }

  /** Puts the weekly hours of the kennel into the spans, where that is asked for. */
  private void writeOutHours(Call call, Ledger ledger, Known.Season season, Typed typed) {
    if (!ofKennel || !typed.value("weekly").equals("yes")) {
      return;
    }
    String blood = Documents.text(Documents.of(season.cycle().document()), "firstBlood", "on");
    LocalDate today =
        season.cycle().moment(call.now()).atZone(Documents.zone(season.cycle())).toLocalDate();
    LocalDate begins = blood == null ? today : LocalDate.parse(blood);
    KennelForm.writeOut(typed, KennelPages.of(call, ledger), begins, DAYS_OF_SEASON);
  }

  private Answer show(Call call) {
    return call.read(
        ledger -> {
          Known.Season season = new Known(call, ledger).seasonToEnter();
          Node.Members document = Documents.of(season.cycle().document());
          Typed typed =
              fields(season)
                  .filled(document)
                  .fill("was", Integer.toString(season.cycle().version()));
          Node.Members kennel = KennelPages.of(call, ledger);
          boolean blank = ofKennel && !document.byKey().containsKey("breeding");
          if (blank) {
            KennelForm.fillIn(typed, kennel);
          }
          return page(call, ledger, 200, season, typed);
        });
  }

  private Answer change(Call call) {
    Typed typed = Typed.of(call.form());
    Answer answer =
        Forms.save(
            call,
            typed,
            ledger -> {
              Known.Season season = new Known(call, ledger).seasonToEnter();
              writeOutHours(call, ledger, season, typed);
              Node.Members said =
                  fields(season).read(typed, Documents.of(season.cycle().document()));
              if (said == null) {
                return null;
              }
              Forms.mustMatch(typed, season.cycle().version());
              Recording.of(call, ledger).changeSeason(season, said, season.cycle().asOf());
              return Answer.seeOther("/seasons/" + season.cycle().key() + "?done=changed");
            },
            ledger -> page(call, ledger, UNFIT, new Known(call, ledger).season(), typed));
    Keeping.after(call, answer, Known::season);
    return answer;
  }
}
