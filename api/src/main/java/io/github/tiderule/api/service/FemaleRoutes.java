package io.github.tiderule.api.service;

import io.github.tiderule.api.node.Node;
import io.github.tiderule.api.node.NodeText;
import io.github.tiderule.api.record.Cycle;
import io.github.tiderule.api.record.CycleText;
import io.github.tiderule.api.record.Female;
import io.github.tiderule.api.record.Keys;
import io.github.tiderule.api.record.Ledger;
import io.github.tiderule.api.record.Page;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

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
    String name = name(body, Keys.next(call.now()));
    String document = document(body, name);
    CycleCheck.read(CycleText.ofFemale(call.now(), document), "/female", "");
    return call.changeOnce(
        body.bytes(),
        ledger -> {
          Female female = ledger.females().add(call.person().key(), name, document, call.now());
          call.note(ledger, "female-added", female.key(), female.key());
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
          String name = name(body, was.handle());
          String document = document(body, name);
          CycleCheck.read(CycleText.ofFemale(call.now(), document), "/female", "");
          Female female =
              ledger.females().change(was, name, document, call.person().key(), call.now());
          checkSeasons(ledger, female);
          call.note(ledger, "female-changed", female.key(), female.key());
          return Answer.json(new Shown(call.person(), ledger).female(female), female.version());
        });
  }

  /** What is newly said of her must not make a season of hers a bad cycle file. */
  private static void checkSeasons(Ledger ledger, Female female) {
    Page.Wanted wanted = Page.Wanted.FIRST;
    while (true) {
      Page<Cycle> page = ledger.cycles().of(female.key(), wanted);
      for (Cycle cycle : page.items()) {
        CycleCheck.read(
            CycleText.of(cycle.seenAt(), female, cycle, ledger.entries().current(cycle.key())),
            "/female",
            "");
      }
      if (page.next() == null) {
        return;
      }
      wanted = new Page.Wanted(page.next(), wanted.limit());
    }
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
          Female female = ledger.females().share(was, shared, call.person().key(), call.now());
          call.note(
              ledger,
              shared ? "female-shared" : "female-sharing-ended",
              female.key(),
              female.key());
          return Answer.json(new Shown(call.person(), ledger).female(female), female.version());
        });
  }

  /** What her owner calls her in cycle files; what cannot be one is refused by their reader. */
  private static String name(Body body, String otherwise) {
    return body.node("id") instanceof Node.Text text ? text.value() : otherwise;
  }

  private static String document(Body body, String name) {
    Map<String, Node> fields = new LinkedHashMap<>();
    fields.put("id", new Node.Text(name));
    fields.putAll(body.members().byKey());
    return NodeText.of(new Node.Members(fields));
  }
}
