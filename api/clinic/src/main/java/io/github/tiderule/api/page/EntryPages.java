package io.github.tiderule.api.page;

import io.github.tiderule.api.access.People;
import io.github.tiderule.api.access.Person;
import io.github.tiderule.api.page.form.ObservationForm;
import io.github.tiderule.api.page.form.Typed;
import io.github.tiderule.api.page.frame.Forms;
import io.github.tiderule.api.page.frame.Frame;
import io.github.tiderule.api.page.frame.Templates;
import io.github.tiderule.api.page.frame.Who;
import io.github.tiderule.api.page.plan.Documents;
import io.github.tiderule.api.page.plan.Kept;
import io.github.tiderule.api.page.plan.Observed;
import io.github.tiderule.api.page.plan.Remembered;
import io.github.tiderule.api.record.Change;
import io.github.tiderule.api.record.Entry;
import io.github.tiderule.api.record.GivenAdvice;
import io.github.tiderule.api.record.Ledger;
import io.github.tiderule.api.service.Known;
import io.github.tiderule.api.service.Recording;
import io.github.tiderule.api.service.http.Answer;
import io.github.tiderule.api.service.http.Call;
import io.github.tiderule.api.service.http.PathPart;
import io.github.tiderule.api.service.http.Refusal;
import io.github.tiderule.api.service.http.Route;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.format.node.Node;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Entering an observation, and what became of one. */
public final class EntryPages {

  private static final String ENTER = SeasonPages.ONE + "/enter/{kind}";
  static final String ONE = SeasonPages.ONE + "/entries/{observation}";
  private static final int UNFIT = 422;

  private EntryPages() {}

  /**
   * The form of an observation.
   *
   * @param was what is corrected; absent for a new one
   * @param lastUnit the unit of the last value; absent where there was none
   * @param asked what is asked about it, with its readings; absent where nothing is
   * @param history what became of it so far, last first; empty for a new one
   * @param takenBack whether it counts no more
   * @param kinds what else can be entered; none where one is corrected
   */
  public record Form(
      Frame frame,
      Who who,
      String action,
      String kind,
      Typed typed,
      @Nullable String was,
      @Nullable String lastUnit,
      @Nullable String asked,
      List<Past> history,
      boolean takenBack,
      List<String> kinds) {}

  /** An entry that was made. */
  public record Past(
      String change, @Nullable String words, @Nullable String reason, String by, String at) {}

  static List<Route> all() {
    return List.of(
        Route.page(Route.Method.GET, ENTER, Route.Need.WRITER, EntryPages::blank),
        Route.page(Route.Method.POST, ENTER, Route.Need.WRITER, EntryPages::add),
        Route.page(Route.Method.GET, ONE, Route.Need.ANYBODY, EntryPages::show));
  }

  private static String kind(Call call) {
    String kind = call.part("kind");
    if (!ObservationForm.isKind(kind)) {
      throw Refusal.notFound();
    }
    return kind;
  }

  private static Answer blank(Call call) {
    String kind = kind(call);
    return call.read(
        ledger -> {
          Known.Season season = new Known(call, ledger).seasonToEnter();
          Remembered remembered = Remembered.of(ledger.entries().current(season.cycle().key()));
          Typed typed = kind.equals("progesterone") ? remembered.form() : Typed.nothing();
          return form(call, 200, season, kind, typed, remembered);
        });
  }

  private static Answer form(
      Call call, int status, Known.Season season, String kind, Typed typed, Remembered remembered) {
    Who who = Who.of(call, season.female(), season.cycle());
    return Templates.page(
        status,
        "entry",
        new Form(
            Frame.of(call, "").titled("enter." + kind, who.name()),
            who,
            who.path() + "/enter/" + kind,
            kind,
            typed,
            null,
            remembered.unit(),
            null,
            List.of(),
            false,
            ObservationForm.OFFERED));
  }

  private static Answer add(Call call) {
    String kind = kind(call);
    Typed typed = Typed.of(call.form());
    Texts texts = Texts.ofPages(Locale.ROOT);
    Answer answer =
        Forms.save(
            call,
            typed,
            ledger -> {
              Known.Season season = new Known(call, ledger).season();
              List<Node.Members> observations =
                  ObservationForm.of(kind, Documents.zone(season.cycle()), texts)
                      .readAll(
                          ObservationForm.freeIds(
                              kind,
                              ledger.entries().ids(season.cycle().key()),
                              Math.max(1, typed.all("sign").size())),
                          typed,
                          season.cycle().moment(call.now()));
              Answer answered = null;
              for (Node.Members one : observations) {
                Entry entry = Recording.of(call, ledger).add(season, one);
                answered =
                    observations.size() == 1
                        ? seen(season, "entered", entry)
                        : Answer.seeOther("/seasons/" + season.cycle().key() + "?done=entered");
              }
              return answered;
            },
            ledger -> {
              Known.Season season = new Known(call, ledger).season();
              return form(
                  call,
                  UNFIT,
                  season,
                  kind,
                  typed,
                  Remembered.of(ledger.entries().current(season.cycle().key())));
            });
    Keeping.after(call, answer, Known::season);
    return answer;
  }

  static Answer seen(Known.Season season, String done, Entry entry) {
    return Answer.seeOther(
        "/seasons/"
            + season.cycle().key()
            + "?done="
            + done
            + "&entry="
            + PathPart.of(entry.observation()));
  }

  /** The entries about the observation of the path, which is there. */
  static List<Entry> history(Call call, Ledger ledger, Known.Season season) {
    List<Entry> history = ledger.entries().history(season.cycle().key(), call.part("observation"));
    if (history.isEmpty()) {
      throw Refusal.notFound();
    }
    return history;
  }

  static Entry last(List<Entry> history) {
    return history.get(history.size() - 1);
  }

  /** What an observation read when it last read anything. */
  static Node.Members document(List<Entry> history) {
    for (int i = history.size() - 1; i >= 0; i--) {
      String document = history.get(i).document();
      if (document != null) {
        return Documents.of(document);
      }
    }
    throw new IllegalStateException("an observation that never read anything");
  }

  private static Answer show(Call call) {
    return call.read(
        ledger -> {
          Known.Season season = new Known(call, ledger).season();
          List<Entry> history = history(call, ledger, season);
          Node.Members document = document(history);
          ObservationForm form =
              ObservationForm.of(
                  kindOf(document), Documents.zone(season.cycle()), Texts.ofPages(Locale.ROOT));
          Typed typed = form.filled(document).fill("was", Integer.toString(last(history).number()));
          return correction(call, 200, ledger, season, history, typed);
        });
  }

  static String kindOf(Node.Members document) {
    return Objects.requireNonNull(Documents.text(document, "kind"));
  }

  static Answer correction(
      Call call, int status, Ledger ledger, Known.Season season, List<Entry> history, Typed typed) {
    Who who = Who.of(call, season.female(), season.cycle());
    Frame frame = Frame.of(call, "");
    Node.Members document = document(history);
    List<Past> past = new ArrayList<>();
    People people = People.of(ledger);
    for (Entry entry : history) {
      past.add(
          0,
          new Past(
              entry.change().word(),
              Observed.words(entry, frame.texts(), frame.words()),
              entry.reason(),
              people.find(entry.person()).map(Person::name).orElse(""),
              frame.words().moment(entry.at().atZone(who.zone()).toOffsetDateTime())));
    }
    return Templates.page(
        status,
        "entry",
        new Form(
            frame.titled("correct.title", who.name()),
            who,
            who.path() + "/entries/" + PathPart.of(last(history).observation()),
            kindOf(document),
            typed,
            Observed.words(document, frame.texts(), frame.words()),
            null,
            ledger.advices().latest(season.cycle().key(), 1).stream()
                .map(given -> asked(given, last(history), frame))
                .flatMap(Stream::ofNullable)
                .findFirst()
                .orElse(null),
            past,
            last(history).change() == Change.RETRACTED,
            List.of()));
  }

  private static @Nullable String asked(GivenAdvice given, Entry about, Frame frame) {
    return Kept.question(given, about.observation(), frame.texts(), frame.words());
  }
}
