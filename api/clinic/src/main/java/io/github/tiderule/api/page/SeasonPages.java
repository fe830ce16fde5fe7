package io.github.tiderule.api.page;

import io.github.tiderule.api.page.form.SeasonForm;
import io.github.tiderule.api.page.form.Typed;
import io.github.tiderule.api.page.frame.Forms;
import io.github.tiderule.api.page.frame.Frame;
import io.github.tiderule.api.page.frame.Templates;
import io.github.tiderule.api.page.frame.Who;
import io.github.tiderule.api.page.plan.CallVet;
import io.github.tiderule.api.page.plan.Documents;
import io.github.tiderule.api.page.plan.Observed;
import io.github.tiderule.api.page.plan.PlanView;
import io.github.tiderule.api.page.plan.Seasons;
import io.github.tiderule.api.page.plan.Signatures;
import io.github.tiderule.api.page.plan.Standing;
import io.github.tiderule.api.record.Change;
import io.github.tiderule.api.record.Entry;
import io.github.tiderule.api.record.Female;
import io.github.tiderule.api.record.GivenAdvice;
import io.github.tiderule.api.record.Ledger;
import io.github.tiderule.api.service.Known;
import io.github.tiderule.api.service.Recording;
import io.github.tiderule.api.service.http.Answer;
import io.github.tiderule.api.service.http.Call;
import io.github.tiderule.api.service.http.Route;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.format.node.Node;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** A season: the answer, what is due, her days, and all else folded away. */
public final class SeasonPages {

  static final String ONE = "/seasons/{cycle}";
  private static final String NEW = "/females/{female}/seasons/new";
  private static final int UNFIT = 422;

  private SeasonPages() {}

  /**
   * The page of a season.
   *
   * @param vet whom who looks calls; absent where they kept no number
   * @param mayDecide whether who looks is her keeper
   * @param clinic whether people sign in, so that there is somebody to share her with
   * @param shared whether the clinic sees her
   * @param links those to this season, for her keeper
   * @param undo the entry that can be undone at once; absent where none was just made
   */
  public record Shown(
      Frame frame,
      Who who,
      PlanView plan,
      @Nullable CallVet vet,
      boolean mayDecide,
      boolean clinic,
      boolean shared,
      List<LinkPages.Line> links,
      List<Signatures.Signed> reviews,
      @Nullable Undo undo,
      List<Observed> entries) {

    /** The number of the last entry about an observation. */
    public int numberOf(String observation) {
      return entries.stream()
          .filter(one -> one.id().equals(observation))
          .mapToInt(Observed::number)
          .findFirst()
          .orElse(0);
    }
  }

  /** An entry that was just made. */
  public record Undo(String observation, int number, Change of) {

    /** Whether it was new, so that undoing it takes it back. */
    public boolean isOfNew() {
      return of == Change.ADDED;
    }

    /** What was done, in a word. */
    public String change() {
      return of.word();
    }
  }

  /** The form of a season. */
  public record Form(Frame frame, String action, String back, String name, Typed typed) {}

  static List<Route> all() {
    return List.of(
        Route.page(Route.Method.GET, NEW, Route.Need.WRITER, SeasonPages::blank),
        Route.page(Route.Method.POST, NEW, Route.Need.WRITER, SeasonPages::add),
        Route.page(Route.Method.GET, ONE, Route.Need.ANYBODY, SeasonPages::show),
        Route.page(Route.Method.GET, ONE + "/edit", Route.Need.WRITER, SeasonPages::edit),
        Route.page(Route.Method.POST, ONE + "/edit", Route.Need.WRITER, SeasonPages::change));
  }

  /** What the record holds of the season of the path. */
  static Standing.Held held(Call call) {
    return call.read(
        ledger -> {
          Known.Season season = new Known(call, ledger).season();
          return Standing.Held.of(ledger, season.female(), season.cycle());
        });
  }

  private static Answer show(Call call) {
    Standing.Held held = held(call);
    Standing standing = Keeping.looked(call, held);
    return call.read(ledger -> Templates.page("season", shown(call, ledger, held, standing)));
  }

  private static Shown shown(Call call, Ledger ledger, Standing.Held held, Standing standing) {
    Who who = Who.of(call, held.female(), held.cycle());
    Frame frame = Frame.of(call, who.name());
    boolean mayDecide = call.person().mayDecide(held.female());
    GivenAdvice kept = standing.kept();
    return new Shown(
        frame,
        who,
        PlanView.of(standing.answered(), standing.before(), frame.texts(), frame.words()),
        CallVet.of(KennelPages.of(call, ledger)),
        mayDecide,
        !call.person().isLocal(),
        held.female().shared(),
        mayDecide ? LinkPages.lines(ledger, held.cycle(), frame, call.now()) : List.of(),
        new Signatures(ledger, frame.words(), who.zone())
            .beside(who.season(), kept == null ? null : kept.key()),
        undo(call, ledger, who),
        Observed.all(standing.current(), standing.told(), frame.texts(), frame.words()));
  }

  private static @Nullable Undo undo(Call call, Ledger ledger, Who who) {
    String named = call.query("entry").orElse("");
    List<Entry> history = ledger.entries().history(who.season(), named);
    if (history.isEmpty() || !who.mayEnter()) {
      return null;
    }
    Entry last = history.get(history.size() - 1);
    return new Undo(named, last.number(), last.change());
  }

  private static Answer blank(Call call) {
    return call.read(
        ledger -> {
          Known known = new Known(call, ledger);
          Female female = known.female();
          known.mustEnter(female);
          Typed typed = Typed.nothing();
          Seasons seasons = Seasons.of(ledger, female);
          if (seasons.last() != null) {
            typed.fill("zone", Documents.zone(seasons.last()).getId());
          }
          return form(call, 200, female, null, typed);
        });
  }

  private static Answer form(
      Call call, int status, Female female, @Nullable String season, Typed typed) {
    Frame frame = Frame.of(call, "");
    String path = season == null ? "/females/" + female.key() : "/seasons/" + season;
    return Templates.page(
        status,
        "season-form",
        new Form(
            frame.titled(season == null ? "season.new" : "season.edit"),
            season == null ? path + "/seasons/new" : path + "/edit",
            path,
            Documents.name(female, frame.texts()),
            typed));
  }

  private static Answer add(Call call) {
    Typed typed = Typed.of(call.form());
    Texts texts = Frame.of(call, "").texts();
    return Forms.save(
        call,
        typed,
        ledger -> {
          Female female = new Known(call, ledger).female();
          Node.Members said = SeasonForm.read(typed, null, texts);
          return said == null
              ? null
              : Answer.seeOther(
                  "/seasons/"
                      + Recording.of(call, ledger)
                          .addSeason(female, withLaboratory(call, ledger, said), null)
                          .key()
                      + "?done=season");
        },
        ledger -> form(call, UNFIT, new Known(call, ledger).female(), null, typed));
  }

  /** A new season with what the kennel says of its laboratory. */
  private static Node.Members withLaboratory(Call call, Ledger ledger, Node.Members said) {
    Node laboratory = KennelPages.of(call, ledger).byKey().get("laboratory");
    if (laboratory == null) {
      return said;
    }
    Map<String, Node> fields = new LinkedHashMap<>(said.byKey());
    fields.put("laboratory", laboratory);
    return new Node.Members(fields);
  }

  private static Answer edit(Call call) {
    return call.read(
        ledger -> {
          Known.Season season = new Known(call, ledger).seasonToEnter();
          Typed typed =
              SeasonForm.filled(Documents.of(season.cycle().document()))
                  .fill("was", Integer.toString(season.cycle().version()));
          return form(call, 200, season.female(), season.cycle().key(), typed);
        });
  }

  private static Answer change(Call call) {
    Typed typed = Typed.of(call.form());
    Texts texts = Frame.of(call, "").texts();
    Answer answer =
        Forms.save(
            call,
            typed,
            ledger -> {
              Known.Season season = new Known(call, ledger).season();
              Node.Members was = Documents.of(season.cycle().document());
              Node.Members said = SeasonForm.read(typed, was, texts);
              if (said == null) {
                return null;
              }
              Forms.mustMatch(typed, season.cycle().version());
              Recording.of(call, ledger).changeSeason(season, said, season.cycle().asOf());
              return Answer.seeOther("/seasons/" + season.cycle().key() + "?done=changed");
            },
            ledger -> {
              Known.Season season = new Known(call, ledger).season();
              return form(call, UNFIT, season.female(), season.cycle().key(), typed);
            });
    Keeping.after(call, answer, Known::season);
    return answer;
  }
}
