package io.github.tiderule.api.service;

import io.github.tiderule.api.node.Node;
import io.github.tiderule.api.node.NodeText;
import io.github.tiderule.api.problem.Problem;
import io.github.tiderule.api.problem.ProblemCode;
import io.github.tiderule.api.record.Change;
import io.github.tiderule.api.record.CycleText;
import io.github.tiderule.api.record.Entry;
import io.github.tiderule.api.record.Ledger;
import io.github.tiderule.api.record.Page;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
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
    String document = NodeText.of(body.members());
    return call.changeOnce(
        body.bytes(),
        ledger -> {
          Known known = new Known(call, ledger);
          Known.Season season = known.season();
          known.mustEnter(season.female());
          Instant moment = season.cycle().moment(call.now());
          List<String> all =
              new ArrayList<>(CycleText.documents(ledger.entries().current(season.cycle().key())));
          all.add(document);
          check(season, moment, all, all.size() - 1, "");
          String id = ((Node.Text) Body.there(body.node("id"))).value();
          Entry entry =
              ledger
                  .entries()
                  .add(season.cycle().key(), id, document, call.person().key(), moment, call.now());
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
    String document = observation == null ? null : NodeText.of(observation);
    return call.changeOnce(
        body.bytes(),
        ledger -> {
          Known known = new Known(call, ledger);
          Known.Season season = known.season();
          known.mustEnter(season.female());
          Entry was = last(call, ledger, season);
          if (observation != null) {
            mustKeepId(observation, was.observation());
          }
          call.mustMatch(was.number());
          Instant moment = season.cycle().moment(call.now());
          List<String> all = new ArrayList<>();
          int place = -1;
          for (Entry entry : ledger.entries().current(season.cycle().key())) {
            if (entry.number() != was.number()) {
              all.add(Body.there(entry.document()));
            } else if (document != null) {
              place = all.size();
              all.add(document);
            }
          }
          if (was.change() != Change.RETRACTED) {
            check(season, moment, all, place, "/observation");
          }
          Entry entry =
              ledger
                  .entries()
                  .replace(was, document, reason, call.person().key(), moment, call.now());
          return entered(call, ledger, season, entry);
        });
  }

  private static void check(
      Known.Season season, Instant moment, List<String> observations, int place, String sent) {
    String file =
        CycleText.of(moment, season.female().document(), season.cycle().document(), observations);
    CycleCheck.read(file, "/observations/" + place, sent);
  }

  private static Answer entered(Call call, Ledger ledger, Known.Season season, Entry entry) {
    call.note(
        ledger,
        "observation-" + entry.change().word(),
        season.cycle().key() + "/" + entry.number(),
        season.female().key());
    return Answer.made(
        new Shown(call.person(), ledger).entry(entry),
        "/v1/cycles/" + season.cycle().key() + "/observations/" + encoded(entry.observation()),
        entry.number());
  }

  private static String encoded(String id) {
    return URLEncoder.encode(id, StandardCharsets.UTF_8).replace("+", "%20");
  }
}
