package io.github.tiderule.api.page;

import io.github.tiderule.api.page.form.Choices;
import io.github.tiderule.api.page.form.ObservationForm;
import io.github.tiderule.api.page.form.Typed;
import io.github.tiderule.api.page.frame.Forms;
import io.github.tiderule.api.page.plan.Documents;
import io.github.tiderule.api.record.Change;
import io.github.tiderule.api.record.Entry;
import io.github.tiderule.api.service.Known;
import io.github.tiderule.api.service.Recording;
import io.github.tiderule.api.service.http.Answer;
import io.github.tiderule.api.service.http.Call;
import io.github.tiderule.api.service.http.Route;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.format.node.Node;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Correcting an observation, saying its unit, taking it back, and undoing a correction. */
final class CorrectionPages {

  private static final int UNFIT = 422;

  /** A number as a question offers it. */
  private static final Pattern NUMBER = Pattern.compile("[0-9]{1,6}(\\.[0-9]{1,12})?");

  private CorrectionPages() {}

  static List<Route> all() {
    return List.of(
        Route.page(Route.Method.POST, EntryPages.ONE, Route.Need.WRITER, CorrectionPages::correct),
        Route.page(
            Route.Method.POST, EntryPages.ONE + "/unit", Route.Need.WRITER, CorrectionPages::unit),
        Route.page(
            Route.Method.POST,
            EntryPages.ONE + "/take-back",
            Route.Need.WRITER,
            CorrectionPages::takeBack),
        Route.page(
            Route.Method.POST,
            EntryPages.ONE + "/restore",
            Route.Need.WRITER,
            CorrectionPages::restore));
  }

  private static Answer correct(Call call) {
    Typed typed = Typed.of(call.form());
    Texts texts = Texts.ofPages(Locale.ROOT);
    return replaced(
        call,
        typed,
        "corrected",
        (season, history) -> {
          String reason = reason(typed, texts);
          Entry was = EntryPages.last(history);
          return new Replacement(
              ObservationForm.of(
                      EntryPages.kindOf(EntryPages.document(history)),
                      Documents.zone(season.cycle()),
                      texts)
                  .read(was.observation(), typed, season.cycle().moment(call.now())),
              reason);
        });
  }

  /** The answer to the question which unit a value has, or which number was meant. */
  private static Answer unit(Call call) {
    Typed typed = Typed.of(call.form());
    Texts texts = Texts.ofPages(Locale.ROOT);
    return replaced(
        call,
        typed,
        "answered",
        (season, history) -> {
          Map<String, Node> fields = new LinkedHashMap<>(EntryPages.document(history).byKey());
          fields.put("unit", new Node.Text(typed.value("unit")));
          if (NUMBER.matcher(typed.value("value")).matches()) {
            fields.put("value", new Node.Digits(typed.value("value")));
            return new Replacement(
                new Node.Members(fields),
                texts.say("reason.number", typed.value("value"), typed.value("unit")));
          }
          return new Replacement(
              new Node.Members(fields), texts.say("reason.unit", typed.value("unit")));
        });
  }

  private static Answer takeBack(Call call) {
    Typed typed = Typed.of(call.form());
    Texts texts = Texts.ofPages(Locale.ROOT);
    return replaced(
        call,
        typed,
        "taken-back",
        (season, history) -> {
          return new Replacement(null, reason(typed, texts));
        });
  }

  /** Why, as it is tapped or typed. */
  private static String reason(Typed typed, Texts texts) {
    if (typed.has("reason")) {
      return typed.value("reason");
    }
    if (Choices.CORRECTIONS.contains(typed.value("why"))) {
      return texts.word("why", typed.value("why"));
    }
    typed.refuse("reason", texts.say("fault.reason"));
    return "";
  }

  /** Undoes a correction, or the taking back: it reads again what it read before. */
  private static Answer restore(Call call) {
    Typed typed = Typed.of(call.form());
    return replaced(
        call,
        typed,
        "restored",
        (season, history) ->
            new Replacement(
                EntryPages.document(history.subList(0, Math.max(1, history.size() - 1))),
                Texts.ofPages(Locale.ROOT)
                    .say(
                        EntryPages.last(history).change() == Change.RETRACTED
                            ? "reason.used-again"
                            : "reason.restored")));
  }

  /**
   * What an observation reads from now on.
   *
   * @param observation absent when it is taken back
   */
  private record Replacement(Node.@Nullable Members observation, String reason) {}

  private interface Replacing {
    Replacement of(Known.Season season, List<Entry> history);
  }

  private static Answer replaced(Call call, Typed typed, String done, Replacing replacing) {
    Answer answer =
        Forms.save(
            call,
            typed,
            ledger -> {
              Known.Season season = new Known(call, ledger).seasonToEnter();
              List<Entry> history = EntryPages.history(call, ledger, season);
              Entry was = EntryPages.last(history);
              Replacement by = replacing.of(season, history);
              if (!typed.isGood()) {
                return null;
              }
              Forms.mustMatch(typed, was.number());
              Recording recording = Recording.of(call, ledger);
              boolean again = done.equals("restored") && was.change() == Change.RETRACTED;
              Entry entry =
                  again && by.observation() != null
                      ? recording.restore(season, was, by.observation(), by.reason())
                      : recording.replace(season, was, by.observation(), by.reason(), "");
              return EntryPages.seen(season, done, entry);
            },
            ledger -> {
              Known.Season season = new Known(call, ledger).season();
              List<Entry> history = EntryPages.history(call, ledger, season);
              Typed again = typed.has("at") ? typed : refilled(typed, season, history);
              again.fill("was", Integer.toString(EntryPages.last(history).number()));
              return EntryPages.correction(call, UNFIT, ledger, season, history, again);
            });
    Keeping.after(call, answer, Known::season);
    return answer;
  }

  /** The form of what an observation reads, with the faults of a shorter form about it. */
  private static Typed refilled(Typed typed, Known.Season season, List<Entry> history) {
    Node.Members document = EntryPages.document(history);
    Typed filled =
        ObservationForm.of(
                EntryPages.kindOf(document),
                Documents.zone(season.cycle()),
                Texts.ofPages(Locale.ROOT))
            .filled(document);
    typed.faults().forEach(fault -> filled.refuse(fault.field(), fault.text()));
    return filled;
  }
}
