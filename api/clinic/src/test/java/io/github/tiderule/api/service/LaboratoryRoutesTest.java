package io.github.tiderule.api.service;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.is;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.github.tiderule.api.access.Role;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A laboratory's table goes into the record in two steps. */
class LaboratoryRoutesTest {

  private static ObjectNode table(String file) {
    return JsonNodeFactory.instance
        .objectNode()
        .put("file", file)
        .put("columns", "at=Drawn,value=Result,unit=Unit");
  }

  @Test
  void onlyWhatWasLookedAtIsEntered() {
    try (Desk desk = Desk.withUsers()) {
      Asker asker = desk.asker("anna", Role.KEEPER);
      World world = World.of(asker, "one");
      String path = "/v1/cycles/" + world.part("cycle");
      ObjectNode table =
          table(
              """
              Drawn;Result;Unit
              08.01.2027 08:00;2,1;ng/mL
              11.01.2027 08:00;3,2;ng/mL
              12.01.2027 08:00;6,0;
              12.01.2027;6,0;ng/mL
              """);
      Asker.Got seen = asker.post(path + "/laboratory-file/preview", table.toString()).mustBe(200);
      assertThat(
          seen.json().findValuesAsText("outcome"),
          is(List.of("duplicate", "new", "new", "refused")));
      assertThat(asker.get(path + "/observations").json().at("/items").size(), is(1));

      String preview = seen.text("/preview");
      asker
          .post(
              path + "/laboratory-file",
              table("Drawn;Result;Unit\n11.01.2027 08:00;32;ng/mL\n")
                  .put("preview", preview)
                  .toString())
          .mustBe(409);
      asker.post(path + "/laboratory-file", table.put("preview", preview).toString()).mustBe(201);
      Asker.Got all = asker.get(path + "/observations");
      assertThat(all.json().at("/items").size(), is(3));
      assertThat(all.body(), containsString("\"id\":\"lab-2027-01-11T07:00Z\""));
      Asker.Got advice = asker.post(path + "/advice", "{}").mustBe(201);
      assertThat(advice.text("/questions/0/about"), is("lab-2027-01-12T07:00Z"));
      assertThat(desk.faults, is(List.of()));
    }
  }

  @Test
  void whatWasTakenBackKeepsItsId() {
    try (Desk desk = Desk.withUsers()) {
      Asker asker = desk.asker("anna", Role.KEEPER);
      String path = "/v1/cycles/" + World.of(asker, "one").part("cycle");
      ObjectNode table = table("Drawn;Result;Unit\n11.01.2027 08:00;3,2;ng/mL\n");
      for (String id : List.of("lab-2027-01-11T07:00Z", "lab-2027-01-11T07:00Z-2")) {
        Asker.Got seen =
            asker.post(path + "/laboratory-file/preview", table.toString()).mustBe(200);
        assertThat(seen.text("/lines/0/observation/id"), is(id));
        ObjectNode save = table.deepCopy().put("preview", seen.text("/preview"));
        asker.post(path + "/laboratory-file", save.toString()).mustBe(201);
        asker
            .with("If-Match", "*")
            .post(path + "/observations/" + id + "/retractions", "{\"reason\": \"another bitch\"}")
            .mustBe(201);
      }
    }
  }

  @Test
  void refusalsPointIntoWhatWasSent() {
    try (Desk desk = Desk.withUsers()) {
      Asker asker = desk.asker("anna", Role.KEEPER);
      String path =
          "/v1/cycles/" + World.of(asker, "one").part("cycle") + "/laboratory-file/preview";
      assertThat(
          asker
              .post(path, table("Drawn;Unit\n1;2\n").toString())
              .mustBe(422)
              .text("/problems/0/path"),
          is("/file"));
      assertThat(
          asker.post(path, table(" ").toString()).mustBe(400).text("/problems/0/code"),
          is("empty-file"));
      assertThat(
          asker
              .post(path, table("x").put("columns", "y").toString())
              .mustBe(422)
              .text("/problems/0/path"),
          is("/columns"));
    }
  }
}
