package io.github.tiderule.api.service;

import io.github.tiderule.api.paper.BreederSheet;
import io.github.tiderule.api.paper.PaperSize;
import io.github.tiderule.api.service.http.Answer;
import io.github.tiderule.api.service.http.Body;
import io.github.tiderule.api.service.http.Call;
import io.github.tiderule.api.service.http.Refusal;
import io.github.tiderule.api.service.http.Route;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.change.AdviceChange;
import io.github.tiderule.engine.change.Told;
import io.github.tiderule.format.cycle.CycleFile;
import io.github.tiderule.format.cycle.Reading;
import io.github.tiderule.format.json.AdviceJson;
import io.github.tiderule.format.json.ChangesJson;
import io.github.tiderule.format.json.Layout;
import io.github.tiderule.format.json.ProblemsJson;
import io.github.tiderule.format.node.NodeText;
import io.github.tiderule.format.problem.Problem;
import io.github.tiderule.format.problem.ProblemCode;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;

/** What is said of cycle files that are sent along; nothing of them is kept. */
final class SentRoutes {

  private static final String LINES = "application/x-ndjson";
  private static final String PDF = "application/pdf";

  private SentRoutes() {}

  static List<Route> all() {
    return List.of(
        new Route(Route.Method.POST, "/v1/advice", Route.Need.ANYBODY, SentRoutes::advise),
        new Route(Route.Method.POST, "/v1/changes", Route.Need.ANYBODY, SentRoutes::changes));
  }

  private static Advice advice(Call call, CycleRecord cycle) {
    return call.environment().advise().apply(cycle);
  }

  private static String text(Advice advice) {
    return AdviceJson.text(advice, Layout.ONE_LINE);
  }

  /** One cycle file, as JSON or on paper, or many of them, one a line. */
  private static Answer advise(Call call) {
    if (call.isOf(LINES)) {
      // as bytes: lines of JSON are UTF-8 and say no charset
      return Answer.file(LINES, lines(call).getBytes(StandardCharsets.UTF_8));
    }
    CycleRecord cycle = read(call.bytes());
    return call.accepts(PDF)
        ? Answer.file(
            PDF, BreederSheet.pdf(cycle, call.environment().reason().apply(cycle), paper(call)))
        : Answer.json(text(advice(call, cycle)));
  }

  private static CycleRecord read(byte[] utf8) {
    Reading reading = CycleFile.read(utf8);
    if (reading instanceof Reading.Refused refused) {
      throw Refusal.document(refused.problems());
    }
    return ((Reading.Read) reading).cycle();
  }

  /** An answer a line, in the order of the lines; what is refused names its line. */
  private static String lines(Call call) {
    StringBuilder answers = new StringBuilder();
    long number = 0;
    for (String line : new String(call.bytes(LINES), StandardCharsets.UTF_8).split("\n", -1)) {
      number++;
      if (!line.isBlank()) {
        Reading reading = CycleFile.read(line.getBytes(StandardCharsets.UTF_8));
        answers.append(
            reading instanceof Reading.Read read
                ? text(advice(call, read.cycle()))
                : ProblemsJson.ofLine(number, ((Reading.Refused) reading).problems()));
      }
    }
    return answers.toString();
  }

  private static PaperSize paper(Call call) {
    return PaperSize.of(call.query("paper").orElse(PaperSize.A4.word()))
        .orElseThrow(() -> Refusal.query("paper is a4 or letter."));
  }

  /** What changed from one file of a season to a later one. */
  private static Answer changes(Call call) {
    Body body = call.body();
    body.required("before").members();
    body.required("after").members();
    body.end();
    CycleRecord was = part(body, "before");
    CycleRecord is = part(body, "after");
    String one = was.female().id();
    String other = is.female().id();
    if (one != null && other != null && !one.equals(other)) {
      throw refused(
          "/after/female/id", ProblemCode.CONTRADICTION, "the two files are about two females");
    }
    if (was.asOf().isAfter(is.asOf())) {
      throw refused("/before/asOf", ProblemCode.WRONG_ORDER, "it is later than the other file's");
    }
    return Answer.json(
        ChangesJson.text(
            AdviceChange.between(new Told(was, advice(call, was)), new Told(is, advice(call, is))),
            Layout.ONE_LINE));
  }

  private static CycleRecord part(Body body, String name) {
    return CycleCheck.read(NodeText.of(Objects.requireNonNull(body.node(name))), "", "/" + name);
  }

  private static Refusal refused(String path, ProblemCode code, String message) {
    return Refusal.document(List.of(Problem.of(path, code, message)));
  }
}
