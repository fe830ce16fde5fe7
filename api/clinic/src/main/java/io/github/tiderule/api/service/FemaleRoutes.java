package io.github.tiderule.api.service;

import io.github.tiderule.api.record.Female;
import io.github.tiderule.api.record.table.Page;
import io.github.tiderule.api.service.http.Answer;
import io.github.tiderule.api.service.http.Body;
import io.github.tiderule.api.service.http.Call;
import io.github.tiderule.api.service.http.Route;
import java.util.List;

/** Who she is, and who may see her. */
final class FemaleRoutes {

  private static final String PATH = "/v1/females";
  private static final String ONE = PATH + "/{female}";

  private FemaleRoutes() {}

  static List<Route> all() {
    return List.of(
        new Route(Route.Method.GET, PATH, Route.Need.ANYBODY, FemaleRoutes::list),
        new Route(Route.Method.POST, PATH, Route.Need.WRITER, FemaleRoutes::add),
        new Route(Route.Method.GET, ONE, Route.Need.ANYBODY, FemaleRoutes::show),
        new Route(
            Route.Method.GET, ONE + "/revisions", Route.Need.ANYBODY, FemaleRoutes::revisions),
        new Route(Route.Method.PUT, ONE, Route.Need.WRITER, FemaleRoutes::change),
        new Route(Route.Method.PUT, ONE + "/sharing", Route.Need.WRITER, FemaleRoutes::share));
  }

  private static Answer list(Call call) {
    Page.Wanted wanted = call.page();
    return call.read(
        ledger -> {
          Shown shown = new Shown(call.person(), ledger);
          Page<Female> page =
              ledger
                  .females()
                  .seenBy(call.person().key(), call.person().role().isOfTheClinic(), wanted);
          return Shown.page(page, shown::female);
        });
  }

  private static Answer show(Call call) {
    return call.read(
        ledger -> {
          Female female = new Known(call, ledger).female();
          return Answer.json(new Shown(call.person(), ledger).female(female), female.version());
        });
  }

  private static Answer revisions(Call call) {
    Page.Wanted wanted = call.page();
    return call.read(
        ledger -> {
          String key = new Known(call, ledger).female().key();
          Shown shown = new Shown(call.person(), ledger);
          return Shown.page(
              ledger.revisions().of(key, wanted),
              (json, one) -> shown.revision(json, one, "female"));
        });
  }

  private static Answer add(Call call) {
    Body body = call.body();
    return call.changeOnce(
        body.bytes(),
        ledger -> {
          Female female = Recording.of(call, ledger).addFemale(body.members());
          return Answer.made(
              new Shown(call.person(), ledger).female(female),
              PATH + "/" + female.key(),
              female.version());
        });
  }

  private static Answer change(Call call) {
    Body body = call.body();
    return call.change(
        ledger -> {
          Known known = new Known(call, ledger);
          Female was = known.female();
          known.mustDecide(was);
          call.mustMatch(was.version());
          Female female = Recording.of(call, ledger).changeFemale(was, body.members());
          return Answer.json(new Shown(call.person(), ledger).female(female), female.version());
        });
  }

  private static Answer share(Call call) {
    Body body = call.body();
    Boolean clinic = body.required("clinic").flag();
    body.end();
    boolean shared = Body.there(clinic);
    return call.change(
        ledger -> {
          Known known = new Known(call, ledger);
          Female was = known.female();
          known.mustDecide(was);
          call.mustMatch(was.version());
          Female female = Recording.of(call, ledger).share(was, shared);
          return Answer.json(new Shown(call.person(), ledger).female(female), female.version());
        });
  }
}
