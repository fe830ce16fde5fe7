package io.github.tiderule.api.service;

import io.github.tiderule.api.record.Cycle;
import io.github.tiderule.api.record.Entry;
import io.github.tiderule.api.record.Female;
import io.github.tiderule.api.record.SeasonText;
import io.github.tiderule.api.record.table.Page;
import io.github.tiderule.api.service.http.Answer;
import io.github.tiderule.api.service.http.Body;
import io.github.tiderule.api.service.http.Call;
import io.github.tiderule.api.service.http.Route;
import io.github.tiderule.format.cycle.CycleText;
import io.github.tiderule.format.node.Field;
import io.github.tiderule.format.node.Node;
import io.github.tiderule.format.problem.ProblemCode;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Her seasons. */
final class CycleRoutes {

  private static final String OF_FEMALE = "/v1/females/{female}/cycles";
  private static final String PATH = "/v1/cycles/";
  private static final String ONE = PATH + "{cycle}";

  private CycleRoutes() {}

  static List<Route> all() {
    return List.of(
        new Route(Route.Method.GET, OF_FEMALE, Route.Need.ANYBODY, CycleRoutes::list),
        new Route(Route.Method.POST, OF_FEMALE, Route.Need.WRITER, CycleRoutes::add),
        new Route(Route.Method.GET, ONE, Route.Need.ANYBODY, CycleRoutes::show),
        new Route(Route.Method.GET, ONE + "/revisions", Route.Need.ANYBODY, CycleRoutes::revisions),
        new Route(Route.Method.PUT, ONE, Route.Need.WRITER, CycleRoutes::change),
        new Route(Route.Method.GET, ONE + "/file", Route.Need.ANYBODY, CycleRoutes::file));
  }

  private static Answer list(Call call) {
    Page.Wanted wanted = call.page();
    return call.read(
        ledger -> {
          Female female = new Known(call, ledger).female();
          Shown shown = new Shown(call.person(), ledger);
          return Shown.page(ledger.cycles().of(female.key(), wanted), shown::cycle);
        });
  }

  private static Answer show(Call call) {
    return call.read(
        ledger -> {
          Cycle cycle = new Known(call, ledger).season().cycle();
          return Answer.json(new Shown(call.person(), ledger).cycle(cycle), cycle.version());
        });
  }

  private static Answer revisions(Call call) {
    Page.Wanted wanted = call.page();
    return call.read(
        ledger -> {
          String key = new Known(call, ledger).season().cycle().key();
          Shown shown = new Shown(call.person(), ledger);
          return Shown.page(
              ledger.revisions().of(key, wanted),
              (json, one) -> shown.revision(json, one, "season"));
        });
  }

  private static Answer file(Call call) {
    return call.read(
        ledger -> {
          Known.Season season = new Known(call, ledger).season();
          List<Entry> current = ledger.entries().current(season.cycle().key());
          Instant moment = season.cycle().moment(call.now());
          return Answer.json(
              SeasonText.of(moment, season.female(), season.cycle(), current) + "\n");
        });
  }

  private static Answer add(Call call) {
    Body body = call.body();
    Instant asOf = asOf(body);
    Node.Members season = season(body);
    return call.changeOnce(
        body.bytes(),
        ledger -> {
          Female female = new Known(call, ledger).female();
          Cycle cycle = Recording.of(call, ledger).addSeason(female, season, asOf);
          return Answer.made(
              new Shown(call.person(), ledger).cycle(cycle), PATH + cycle.key(), cycle.version());
        });
  }

  private static Answer change(Call call) {
    Body body = call.body();
    Instant asOf = asOf(body);
    Node.Members said = season(body);
    return call.change(
        ledger -> {
          Known.Season season = new Known(call, ledger).seasonToEnter();
          call.mustMatch(season.cycle().version());
          Cycle cycle = Recording.of(call, ledger).changeSeason(season, said, asOf);
          return Answer.json(new Shown(call.person(), ledger).cycle(cycle), cycle.version());
        });
  }

  private static @Nullable Instant asOf(Body body) {
    Instant asOf = body.optional("asOf").instant(null);
    for (String apart : CycleText.KEPT_APART) {
      Field field = body.optional(apart);
      if (field.isPresent() && !apart.equals("asOf")) {
        field.refuse(
            ProblemCode.UNKNOWN_FIELD,
            "there is no field \"" + apart + "\" here",
            "Maybe leave it out? She and the observations have paths of their own.");
      }
    }
    body.endWithOthers();
    return asOf;
  }

  private static Node.Members season(Body body) {
    Map<String, Node> fields = new LinkedHashMap<>(body.members().byKey());
    fields.remove("asOf");
    return new Node.Members(fields);
  }
}
