package io.github.tiderule.api.service;

import io.github.tiderule.api.record.EarlierSeasons;
import io.github.tiderule.api.record.GivenAdvice;
import io.github.tiderule.api.record.Ledger;
import io.github.tiderule.api.record.Review;
import io.github.tiderule.api.record.table.Page;
import io.github.tiderule.api.service.http.Answer;
import io.github.tiderule.api.service.http.Body;
import io.github.tiderule.api.service.http.Call;
import io.github.tiderule.api.service.http.Route;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.format.cycle.CycleText;
import io.github.tiderule.format.cycle.Reading;
import io.github.tiderule.format.json.AdviceJson;
import io.github.tiderule.format.json.Document;
import io.github.tiderule.format.json.Layout;
import io.github.tiderule.format.node.Node;
import io.github.tiderule.format.node.NodeReader;
import io.github.tiderule.format.node.NodeText;
import io.github.tiderule.format.problem.Problems;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Advice on a season of the record, where it is kept. */
final class AdviceRoutes {

  private static final String PATH = "/v1/advice";
  private static final String ONE = PATH + "/{advice}";
  private static final String OF_CYCLE = "/v1/cycles/{cycle}/advice";
  private static final int LONGEST_NOTE = 2000;

  private AdviceRoutes() {}

  static List<Route> all() {
    return List.of(
        new Route(Route.Method.POST, OF_CYCLE, Route.Need.WRITER, AdviceRoutes::give),
        new Route(Route.Method.GET, OF_CYCLE, Route.Need.ANYBODY, AdviceRoutes::list),
        new Route(Route.Method.GET, ONE, Route.Need.ANYBODY, AdviceRoutes::show),
        new Route(Route.Method.GET, ONE + "/cycle", Route.Need.ANYBODY, AdviceRoutes::cycleThen),
        new Route(Route.Method.GET, ONE + "/trace", Route.Need.ANYBODY, AdviceRoutes::trace),
        new Route(
            Route.Method.GET, ONE + "/reproduction", Route.Need.ANYBODY, AdviceRoutes::reproduce),
        new Route(Route.Method.GET, ONE + "/reviews", Route.Need.ANYBODY, AdviceRoutes::reviews),
        new Route(Route.Method.POST, ONE + "/reviews", Route.Need.VET, AdviceRoutes::review));
  }

  private static Advice advice(Call call, CycleRecord cycle) {
    return call.environment().advise().apply(cycle);
  }

  private static String text(Advice advice) {
    return AdviceJson.text(advice, Layout.ONE_LINE);
  }

  private static Answer give(Call call) {
    byte[] sent = call.isEmpty() ? new byte[0] : call.bytes();
    Instant asked = asOf(sent);
    String file =
        call.read(
            ledger -> {
              Known.Season season = new Known(call, ledger).seasonToEnter();
              return EarlierSeasons.of(ledger, season.female())
                  .file(
                      asked == null ? season.cycle().moment(call.now()) : asked,
                      season.cycle(),
                      ledger.entries().current(season.cycle().key()));
            });
    CycleRecord cycle = CycleCheck.read(file, "/asOf", "/asOf");
    Advice advice = advice(call, cycle);
    return call.changeOnce(
        sent,
        ledger -> {
          Known.Season season = new Known(call, ledger).season();
          GivenAdvice given = Recording.of(call, ledger).keep(season, file, advice, text(advice));
          return Answer.made(given.answer(), PATH + "/" + given.key());
        });
  }

  private static @Nullable Instant asOf(byte[] sent) {
    if (sent.length == 0) {
      return null;
    }
    Body body = Body.of(sent);
    Instant asOf = body.optional("asOf").instant(null);
    body.end();
    return asOf == null ? null : asOf.truncatedTo(ChronoUnit.SECONDS);
  }

  private static Answer list(Call call) {
    Page.Wanted wanted = call.page();
    return call.read(
        ledger -> {
          String cycle = new Known(call, ledger).season().cycle().key();
          Shown shown = new Shown(call.person(), ledger);
          return Shown.page(ledger.advices().of(cycle, wanted), shown::advice);
        });
  }

  private static GivenAdvice given(Call call, Ledger ledger) {
    return new Known(call, ledger).advice().advice();
  }

  private static Answer show(Call call) {
    return call.read(ledger -> Answer.json(given(call, ledger).answer()));
  }

  private static Answer cycleThen(Call call) {
    return call.read(ledger -> Answer.json(given(call, ledger).cycleFile() + "\n"));
  }

  private static Answer trace(Call call) {
    return call.read(
        ledger -> {
          GivenAdvice given = given(call, ledger);
          Node answer = NodeReader.read(given.answer(), new Problems()).orElseThrow();
          Node.Members members = (Node.Members) answer;
          return Answer.json(
              Document.text(
                  Layout.ONE_LINE,
                  json -> {
                    json.text("advice", given.key());
                    Shown.stamp(json, "stamp", given.engine(), given.rules());
                    for (String part : List.of("trace", "notFired")) {
                      Node node = members.byKey().get(part);
                      json.raw(part, node == null ? "[]" : NodeText.of(node));
                    }
                  }));
        });
  }

  /** Works the advice out again from the season as it then was. */
  private static Answer reproduce(Call call) {
    GivenAdvice given = call.read(ledger -> given(call, ledger));
    Reading reading = CycleText.read(given.cycleFile());
    if (!(reading instanceof Reading.Read read)) {
      throw new IllegalStateException("the cycle file of advice " + given.key() + " is refused");
    }
    Advice again = advice(call, read.cycle());
    return Answer.json(
        Document.text(
            Layout.ONE_LINE,
            json -> {
              json.text("advice", given.key())
                  .flag("identical", text(again).equals(given.answer()));
              Shown.stamp(json, "given", given.engine(), given.rules());
              Shown.stamp(json, "present", again.stamp().engine(), again.stamp().rules());
            }));
  }

  private static Answer reviews(Call call) {
    Page.Wanted wanted = call.page();
    return call.read(
        ledger -> {
          Shown shown = new Shown(call.person(), ledger);
          return Shown.page(
              ledger.advices().reviews(given(call, ledger).key(), wanted), shown::review);
        });
  }

  private static Answer review(Call call) {
    Body body = call.body();
    Review.Verdict verdict = body.required("verdict").word(Review.Verdict.class);
    String note =
        (verdict == Review.Verdict.DISAGREED ? body.required("note") : body.optional("note"))
            .text(LONGEST_NOTE);
    body.end();
    return call.changeOnce(
        body.bytes(),
        ledger -> {
          Known.Given given = new Known(call, ledger).advice();
          Review review = Recording.of(call, ledger).review(given, Body.there(verdict), note, null);
          return Answer.made(
              new Shown(call.person(), ledger).review(review),
              PATH + "/" + given.advice().key() + "/reviews");
        });
  }
}
