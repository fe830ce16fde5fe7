package io.github.tiderule.api.service;

import io.github.tiderule.api.record.Entry;
import io.github.tiderule.api.record.Ledger;
import io.github.tiderule.api.record.table.Page;
import io.github.tiderule.api.service.http.Answer;
import io.github.tiderule.api.service.http.Body;
import io.github.tiderule.api.service.http.Call;
import io.github.tiderule.api.service.http.PathPart;
import io.github.tiderule.api.service.http.Refusal;
import io.github.tiderule.api.service.http.Route;
import io.github.tiderule.format.node.Node;
import io.github.tiderule.format.problem.Problem;
import io.github.tiderule.format.problem.ProblemCode;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The observations of a season, and every entry ever made about them. */
final class ObservationRoutes {

  private static final String PATH = "/v1/cycles/{cycle}/observations";
  private static final String ONE = PATH + "/{observation}";
  private static final int LONGEST_REASON = 500;

  private ObservationRoutes() {}

  static List<Route> all() {
    return List.of(
        new Route(Route.Method.GET, PATH, Route.Need.ANYBODY, ObservationRoutes::list),
        new Route(Route.Method.POST, PATH, Route.Need.WRITER, ObservationRoutes::add),
        new Route(
            Route.Method.GET,
            "/v1/cycles/{cycle}/entries",
            Route.Need.ANYBODY,
            ObservationRoutes::entries),
        new Route(Route.Method.GET, ONE, Route.Need.ANYBODY, ObservationRoutes::show),
        new Route(
            Route.Method.POST, ONE + "/corrections", Route.Need.WRITER, ObservationRoutes::correct),
        new Route(
            Route.Method.POST,
            ONE + "/retractions",
            Route.Need.WRITER,
            ObservationRoutes::retract));
  }

  private static Answer list(Call call) {
    Page.Wanted wanted = call.page();
    return call.read(
        ledger -> {
          String cycle = new Known(call, ledger).season().cycle().key();
          Shown shown = new Shown(call.person(), ledger);
          return Shown.page(ledger.entries().latest(cycle, wanted), shown::entry);
        });
  }

  private static Answer entries(Call call) {
    Page.Wanted wanted = call.page();
    return call.read(
        ledger -> {
          String cycle = new Known(call, ledger).season().cycle().key();
          Shown shown = new Shown(call.person(), ledger);
          return Shown.page(ledger.entries().all(cycle, wanted), shown::entry);
        });
  }

  private static Answer show(Call call) {
    return call.read(
        ledger -> {
          Entry last = last(call, ledger, new Known(call, ledger).season());
          return Answer.json(new Shown(call.person(), ledger).entry(last), last.number());
        });
  }

  private static Entry last(Call call, Ledger ledger, Known.Season season) {
    List<Entry> history = ledger.entries().history(season.cycle().key(), call.part("observation"));
    if (history.isEmpty()) {
      throw Refusal.notFound();
    }
    return history.get(history.size() - 1);
  }

  private static Answer add(Call call) {
    Body body = call.body();
    return call.changeOnce(
        body.bytes(),
        ledger -> {
          Known.Season season = new Known(call, ledger).season();
          Entry entry = Recording.of(call, ledger).add(season, body.members());
          return entered(call, ledger, season, entry);
        });
  }

  private static Answer correct(Call call) {
    Body body = call.body();
    String reason = body.required("reason").text(LONGEST_REASON);
    body.required("observation").members();
    body.end();
    Node.Members observation = (Node.Members) Body.there(body.node("observation"));
    return replace(call, body, observation, Body.there(reason));
  }

  private static void mustKeepId(Node.Members observation, String id) {
    if (!new Node.Text(id).equals(observation.byKey().get("id"))) {
      throw Refusal.document(
          List.of(
              new Problem(
                  "/observation/id",
                  ProblemCode.WRONG_TYPE,
                  "id is not \"" + id + "\", which is being corrected",
                  "A correction keeps the id. For another observation, add it and take this one"
                      + " back.")));
    }
  }

  private static Answer retract(Call call) {
    Body body = call.body();
    String reason = body.required("reason").text(LONGEST_REASON);
    body.end();
    return replace(call, body, null, Body.there(reason));
  }

  private static Answer replace(
      Call call, Body body, Node.@Nullable Members observation, String reason) {
    return call.changeOnce(
        body.bytes(),
        ledger -> {
          Known.Season season = new Known(call, ledger).seasonToEnter();
          Entry was = last(call, ledger, season);
          if (observation != null) {
            mustKeepId(observation, was.observation());
          }
          call.mustMatch(was.number());
          Entry entry =
              Recording.of(call, ledger).replace(season, was, observation, reason, "/observation");
          return entered(call, ledger, season, entry);
        });
  }

  private static Answer entered(Call call, Ledger ledger, Known.Season season, Entry entry) {
    return Answer.made(
        new Shown(call.person(), ledger).entry(entry),
        "/v1/cycles/" + season.cycle().key() + "/observations/" + PathPart.of(entry.observation()),
        entry.number());
  }
}
