package io.github.tiderule.api.service;

import io.github.tiderule.api.access.Secrets;
import io.github.tiderule.api.record.Ledger;
import io.github.tiderule.api.service.http.Answer;
import io.github.tiderule.api.service.http.Body;
import io.github.tiderule.api.service.http.Call;
import io.github.tiderule.api.service.http.Refusal;
import io.github.tiderule.api.service.http.Route;
import io.github.tiderule.format.json.Document;
import io.github.tiderule.format.json.Layout;
import io.github.tiderule.format.laboratory.Columns;
import io.github.tiderule.format.laboratory.LaboratoryFile;
import io.github.tiderule.format.laboratory.Line;
import io.github.tiderule.format.node.NodeText;
import io.github.tiderule.format.problem.Pointer;
import io.github.tiderule.format.problem.Problems;
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
          Known.Season season = new Known(call, ledger).seasonToEnter();
          return Answer.json(shown(lines(call, ledger, season, sent)));
        });
  }

  private static List<Line> lines(Call call, Ledger ledger, Known.Season season, Sent sent) {
    Problems problems = new Problems();
    return LaboratoryFile.preview(
            sent.file(),
            sent.columns(),
            CycleCheck.season(call, ledger, season),
            ledger.entries().ids(season.cycle().key()),
            FILE,
            problems)
        .orElseThrow(() -> Refusal.document(problems.all()));
  }

  private static Answer save(Call call) {
    Sent sent = sent(call, true);
    return call.changeOnce(
        sent.bytes(),
        ledger -> {
          Known.Season season = new Known(call, ledger).seasonToEnter();
          List<Line> lines = lines(call, ledger, season, sent);
          if (!digest(lines).equals(sent.preview())) {
            throw Refusal.otherPreview();
          }
          SeasonChanges.enter(
              call,
              ledger,
              season,
              LaboratoryFile.added(lines).stream().map(SeasonChanges.Change::added).toList(),
              FILE.text());
          return Answer.made(shown(lines), "/v1/cycles/" + season.cycle().key() + "/observations");
        });
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
