package io.github.tiderule.api.service;

import io.github.tiderule.api.access.Secrets;
import io.github.tiderule.api.record.Ledger;
import io.github.tiderule.api.service.http.Answer;
import io.github.tiderule.api.service.http.Body;
import io.github.tiderule.api.service.http.Call;
import io.github.tiderule.api.service.http.Refusal;
import io.github.tiderule.api.service.http.Route;
import io.github.tiderule.format.fhir.FhirExport;
import io.github.tiderule.format.fhir.FhirImport;
import io.github.tiderule.format.fhir.Found;
import io.github.tiderule.format.json.Document;
import io.github.tiderule.format.json.Layout;
import io.github.tiderule.format.json.ProblemsJson;
import io.github.tiderule.format.node.Node;
import io.github.tiderule.format.node.NodeText;
import io.github.tiderule.format.problem.Pointer;
import io.github.tiderule.format.problem.Problems;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Progesterone as FHIR Observations: looked at first and then taken in, and given out. */
final class FhirRoutes {

  private static final String PATH = "/v1/cycles/{cycle}/fhir";
  private static final Pointer FILE = Pointer.ROOT.child("file");
  private static final int LONGEST_NAME = 200;
  private static final int DIGEST = 100;

  /** What was sent: the file, whom it calls her, and the preview it was shown in. */
  private record Sent(
      byte[] bytes, String file, @Nullable String subject, @Nullable String preview) {}

  private FhirRoutes() {}

  static List<Route> all() {
    return List.of(
        new Route(Route.Method.GET, PATH, Route.Need.ANYBODY, FhirRoutes::bundle),
        new Route(Route.Method.POST, PATH, Route.Need.WRITER, FhirRoutes::save),
        new Route(Route.Method.POST, PATH + "/preview", Route.Need.WRITER, FhirRoutes::preview));
  }

  private static Sent sent(Call call, boolean saves) {
    Body body = call.body();
    String file = body.required("file").anyText();
    String subject = body.optional("subject").text(LONGEST_NAME);
    String preview = saves ? body.required("preview").text(DIGEST) : null;
    body.end();
    return new Sent(body.bytes(), Body.there(file), subject, preview);
  }

  private static List<Found> found(Call call, Ledger ledger, Known.Season season, Sent sent) {
    String key = season.cycle().key();
    Problems problems = new Problems();
    return FhirImport.preview(
            sent.file(),
            CycleCheck.season(call, ledger, season),
            key,
            sent.subject(),
            ledger.entries().ids(key),
            FILE,
            problems)
        .orElseThrow(() -> Refusal.document(problems.all()));
  }

  private static Answer preview(Call call) {
    Sent sent = sent(call, false);
    return call.read(
        ledger -> {
          Known.Season season = new Known(call, ledger).seasonToEnter();
          return Answer.json(shown(found(call, ledger, season, sent)));
        });
  }

  private static Answer save(Call call) {
    Sent sent = sent(call, true);
    return call.changeOnce(
        sent.bytes(),
        ledger -> {
          Known.Season season = new Known(call, ledger).seasonToEnter();
          List<Found> found = found(call, ledger, season, sent);
          if (!digest(found).equals(sent.preview())) {
            throw Refusal.otherPreview();
          }
          SeasonChanges.enter(call, ledger, season, SeasonChanges.of(found), FILE.text());
          return Answer.made(shown(found), "/v1/cycles/" + season.cycle().key() + "/observations");
        });
  }

  /** Names what would be entered, so that nothing else is entered than was looked at. */
  private static String digest(List<Found> all) {
    return Secrets.digest(
        SeasonChanges.of(all).stream()
            .map(one -> one.id() + " " + document(one.observation()))
            .collect(Collectors.joining("\n")));
  }

  private static @Nullable String document(Node.@Nullable Members observation) {
    return observation == null ? null : NodeText.of(observation);
  }

  private static String shown(List<Found> all) {
    return Document.text(
        Layout.ONE_LINE,
        json ->
            json.text("preview", digest(all)).objects("results", all, one -> result(json, one)));
  }

  private static void result(Document json, Found found) {
    if (found.line() == null) {
      json.text("line", null);
    } else {
      json.whole("line", found.line());
    }
    json.text("place", found.place())
        .word("outcome", found.outcome())
        .text("id", found.id())
        .text("message", found.message());
    ProblemsJson.list(json, found.problems());
    json.raw("observation", document(found.observation()));
  }

  private static Answer bundle(Call call) {
    return call.read(
        ledger ->
            Answer.text(
                FhirExport.MEDIA_TYPE,
                SeasonBundle.text(
                    call, ledger, new Known(call, ledger).season(), Layout.ONE_LINE)));
  }
}
