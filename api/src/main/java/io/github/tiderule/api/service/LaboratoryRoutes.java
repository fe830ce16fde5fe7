package io.github.tiderule.api.service;

import io.github.tiderule.api.access.Secrets;
import io.github.tiderule.api.json.Document;
import io.github.tiderule.api.json.Layout;
import io.github.tiderule.api.laboratoryfile.Columns;
import io.github.tiderule.api.laboratoryfile.LaboratoryFile;
import io.github.tiderule.api.laboratoryfile.Line;
import io.github.tiderule.api.node.Node;
import io.github.tiderule.api.node.NodeText;
import io.github.tiderule.api.problem.Pointer;
import io.github.tiderule.api.problem.Problems;
import io.github.tiderule.api.record.CycleText;
import io.github.tiderule.api.record.Entry;
import io.github.tiderule.api.record.Ledger;
import io.github.tiderule.engine.CycleRecord;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** A laboratory's table, looked at first and then taken into a season. */
final class LaboratoryRoutes {

  private static final String PATH = "/v1/cycles/{cycle}/laboratory-file";
  private static final Pointer FILE = Pointer.ROOT.child("file");
  private static final Pointer COLUMNS = Pointer.ROOT.child("columns");

  /** What was sent: the table, which column holds what, and the preview it was shown in. */
  private record Sent(byte[] bytes, String file, Columns columns, @Nullable String preview) {}

  private LaboratoryRoutes() {}

  static List<Route> all() {
    return List.of(
        new Route(
            Route.Method.POST, PATH + "/preview", Route.Need.WRITER, LaboratoryRoutes::preview),
        new Route(Route.Method.POST, PATH, Route.Need.WRITER, LaboratoryRoutes::save));
  }

  private static Sent sent(Call call, boolean saves) {
    Body body = call.body();
    String file = body.required("file").anyText();
    String names = body.required("columns").anyText();
    String preview = saves ? body.required("preview").text(100) : null;
    body.end();
    Problems problems = new Problems();
    Optional<Columns> columns = Columns.read(Body.there(names), COLUMNS, problems);
    if (columns.isEmpty()) {
      throw Refusal.document(problems.all());
    }
    return new Sent(body.bytes(), Body.there(file), columns.get(), preview);
  }

  private static Answer preview(Call call) {
    Sent sent = sent(call, false);
    return call.read(
        ledger -> {
          Known known = new Known(call, ledger);
          Known.Season season = known.season();
          known.mustEnter(season.female());
          return Answer.json(shown(lines(call, ledger, season, sent)));
        });
  }

  private static List<Line> lines(Call call, Ledger ledger, Known.Season season, Sent sent) {
    String key = season.cycle().key();
    Instant moment = season.cycle().moment(call.now());
    List<Entry> current = ledger.entries().current(key);
    CycleRecord cycle =
        CycleCheck.read(
            CycleText.of(moment, season.female(), season.cycle(), current), "/observations", "");
    Problems problems = new Problems();
    return LaboratoryFile.preview(
            sent.file(), sent.columns(), cycle, ledger.entries().ids(key), FILE, problems)
        .orElseThrow(() -> Refusal.document(problems.all()));
  }

  private static Answer save(Call call) {
    Sent sent = sent(call, true);
    return call.changeOnce(
        sent.bytes(),
        ledger -> {
          Known known = new Known(call, ledger);
          Known.Season season = known.season();
          known.mustEnter(season.female());
          List<Line> lines = lines(call, ledger, season, sent);
          if (!digest(lines).equals(sent.preview())) {
            throw Refusal.otherPreview();
          }
          enter(call, ledger, season, LaboratoryFile.added(lines));
          return Answer.made(shown(lines), "/v1/cycles/" + season.cycle().key() + "/observations");
        });
  }

  private static void enter(
      Call call, Ledger ledger, Known.Season season, List<Node.Members> added) {
    String key = season.cycle().key();
    Instant moment = season.cycle().moment(call.now());
    List<String> all = new ArrayList<>(CycleText.documents(ledger.entries().current(key)));
    List<String> documents = added.stream().map(NodeText::of).toList();
    all.addAll(documents);
    CycleCheck.read(
        CycleText.of(moment, season.female().document(), season.cycle().document(), all),
        "/observations",
        "/file");
    for (int i = 0; i < added.size(); i++) {
      String id = ((Node.Text) Body.there(added.get(i).byKey().get("id"))).value();
      Entry entry =
          ledger.entries().add(key, id, documents.get(i), call.person().key(), moment, call.now());
      call.note(ledger, "observation-added", key + "/" + entry.number(), season.female().key());
    }
  }

  /** Names what would be entered, so that nothing else is entered than was looked at. */
  private static String digest(List<Line> lines) {
    return Secrets.digest(
        LaboratoryFile.added(lines).stream().map(NodeText::of).collect(Collectors.joining("\n")));
  }

  private static String shown(List<Line> lines) {
    return Document.text(
        Layout.ONE_LINE,
        json ->
            json.text("preview", digest(lines))
                .objects(
                    "lines",
                    lines,
                    line ->
                        json.whole("line", line.number())
                            .word("outcome", line.outcome())
                            .text("message", line.message())
                            .raw(
                                "observation",
                                line.observation() == null
                                    ? null
                                    : NodeText.of(line.observation()))));
  }
}
