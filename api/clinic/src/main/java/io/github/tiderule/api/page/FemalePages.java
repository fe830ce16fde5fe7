package io.github.tiderule.api.page;

import io.github.tiderule.api.page.form.FemaleForm;
import io.github.tiderule.api.page.form.Typed;
import io.github.tiderule.api.page.frame.Forms;
import io.github.tiderule.api.page.frame.Frame;
import io.github.tiderule.api.page.frame.Templates;
import io.github.tiderule.api.page.plan.Documents;
import io.github.tiderule.api.page.plan.Seasons;
import io.github.tiderule.api.page.plan.SeasonsTable;
import io.github.tiderule.api.record.Cycle;
import io.github.tiderule.api.record.Female;
import io.github.tiderule.api.service.Known;
import io.github.tiderule.api.service.Recording;
import io.github.tiderule.api.service.http.Answer;
import io.github.tiderule.api.service.http.Call;
import io.github.tiderule.api.service.http.Route;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.format.node.Node;
import java.time.ZoneId;
import java.time.zone.ZoneRulesProvider;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.atomic.AtomicReference;
import org.jspecify.annotations.Nullable;

/** Her own page, and the form of who she is. */
public final class FemalePages {

  private static final String NEW = "/females/new";
  private static final String ONE = "/females/{female}";
  private static final int UNFIT = 422;

  private FemalePages() {}

  /**
   * Her page.
   *
   * @param facts what is known of her, in words
   */
  public record Shown(
      Frame frame,
      String key,
      int version,
      boolean mayEnter,
      boolean mayDecide,
      boolean shared,
      boolean clinic,
      List<String> facts,
      SeasonsTable seasons) {}

  /** The form of who she is. */
  public record Form(Frame frame, String action, @Nullable String back, Typed typed) {}

  static List<Route> all() {
    return List.of(
        Route.page(Route.Method.GET, NEW, Route.Need.WRITER, FemalePages::blank),
        Route.page(Route.Method.POST, NEW, Route.Need.WRITER, FemalePages::add),
        Route.page(Route.Method.POST, "/demo", Route.Need.WRITER, FemalePages::demo),
        Route.page(Route.Method.GET, ONE, Route.Need.ANYBODY, FemalePages::show),
        Route.page(Route.Method.GET, ONE + "/edit", Route.Need.WRITER, FemalePages::edit),
        Route.page(Route.Method.POST, ONE + "/edit", Route.Need.WRITER, FemalePages::change),
        Route.page(Route.Method.POST, ONE + "/sharing", Route.Need.WRITER, FemalePages::share));
  }

  private static Answer show(Call call) {
    return call.read(
        ledger -> {
          Female female = new Known(call, ledger).female();
          Frame frame = Frame.of(call, Documents.name(female, Texts.ofPages(Locale.ROOT)));
          List<Cycle> cycles = new ArrayList<>(Seasons.of(ledger, female).all());
          Collections.reverse(cycles);
          return Templates.page(
              "female",
              new Shown(
                  frame,
                  female.key(),
                  female.version(),
                  call.person().mayEnter(female),
                  call.person().mayDecide(female),
                  female.shared(),
                  frame.person() != null,
                  facts(Documents.of(female.document()), frame),
                  SeasonsTable.of(ledger, cycles, frame.texts(), frame.words())));
        });
  }

  private static List<String> facts(Node.Members female, Frame frame) {
    List<String> facts = new ArrayList<>();
    for (String name :
        List.of(
            "breed", "bornOn", "bodyMassKg", "littersWhelped", "caesareans", "missedPregnancies")) {
      String value = Documents.text(female, name);
      if (value != null) {
        String shown =
            name.equals("bornOn")
                ? frame.words().day(java.time.LocalDate.parse(value))
                : female.byKey().get(name) instanceof Node.Digits
                    ? frame.words().number(value)
                    : value;
        facts.add(frame.say("female." + name + ".is", shown));
      }
    }
    return facts;
  }

  private static Answer form(Call call, int status, @Nullable Female female, Typed typed) {
    Frame frame = Frame.of(call, "");
    return Templates.page(
        status,
        "female-form",
        new Form(
            frame.titled(female == null ? "female.new" : "female.edit"),
            female == null ? NEW : "/females/" + female.key() + "/edit",
            female == null ? null : "/females/" + female.key(),
            typed));
  }

  private static Answer blank(Call call) {
    return form(call, 200, null, Typed.nothing());
  }

  private static Answer add(Call call) {
    Typed typed = Typed.of(call.form());
    return Forms.save(
        call,
        typed,
        ledger -> {
          Node.Members said = FemaleForm.read(typed, null, Texts.ofPages(Locale.ROOT));
          return said == null
              ? null
              : Answer.seeOther(
                  "/females/"
                      + Recording.of(call, ledger).addFemale(said).key()
                      + "/seasons/new?done=female");
        },
        ledger -> form(call, UNFIT, null, typed));
  }

  private static Answer demo(Call call) {
    Typed typed = Typed.of(call.form());
    String zone = typed.value("zone");
    ZoneId where =
        ZoneRulesProvider.getAvailableZoneIds().contains(zone) ? ZoneId.of(zone) : DemoFemale.ZONE;
    AtomicReference<Known.@Nullable Season> made = new AtomicReference<>();
    Answer answer =
        Forms.save(
            call,
            typed,
            ledger -> {
              Known.Season season = DemoFemale.add(call, ledger, where);
              made.set(season);
              return Answer.seeOther("/seasons/" + season.cycle().key() + "?done=demo");
            },
            ledger -> Answer.seeOther("/"));
    Keeping.after(call, answer, known -> made.get());
    return answer;
  }

  private static Answer edit(Call call) {
    return call.read(
        ledger -> {
          Known known = new Known(call, ledger);
          Female female = known.female();
          known.mustDecide(female);
          return form(
              call,
              200,
              female,
              FemaleForm.filled(Documents.of(female.document()))
                  .fill("was", Integer.toString(female.version())));
        });
  }

  private static Answer change(Call call) {
    Typed typed = Typed.of(call.form());
    return Forms.save(
        call,
        typed,
        ledger -> {
          Known known = new Known(call, ledger);
          Female was = known.female();
          known.mustDecide(was);
          Node.Members said =
              FemaleForm.read(typed, Documents.of(was.document()), Texts.ofPages(Locale.ROOT));
          if (said == null) {
            return null;
          }
          Forms.mustMatch(typed, was.version());
          Recording.of(call, ledger).changeFemale(was, said);
          return Answer.seeOther("/females/" + was.key() + "?done=changed");
        },
        ledger -> form(call, UNFIT, new Known(call, ledger).female(), typed));
  }

  private static Answer share(Call call) {
    Typed typed = Typed.of(call.form());
    boolean shared = typed.value("clinic").equals("yes");
    return Forms.save(
        call,
        typed,
        ledger -> {
          Known known = new Known(call, ledger);
          Female was = known.female();
          known.mustDecide(was);
          Forms.mustMatch(typed, was.version());
          Recording.of(call, ledger).share(was, shared);
          return Answer.seeOther(
              "/females/" + was.key() + "?done=" + (shared ? "shared" : "unshared"));
        },
        ledger ->
            Answer.seeOther(
                "/females/" + new Known(call, ledger).female().key() + "?done=changed-meanwhile"));
  }
}
