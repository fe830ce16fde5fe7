package io.github.tiderule.api.service;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.startsWith;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.github.tiderule.api.access.Role;
import java.util.List;
import org.junit.jupiter.api.Test;

/** FHIR Observations go into the record in two steps, and what they say before stays there. */
class FhirRoutesTest {

  private static String observation(String status, String value) {
    return "{\"resourceType\":\"Observation\",\"identifier\":[{\"system\":\"urn:x\",\"value\":\"17\"}],"
        + "\"status\":\""
        + status
        + "\",\"code\":{\"coding\":[{\"system\":\"http://loinc.org\",\"code\":\"2839-9\"}]},"
        + "\"effectiveDateTime\":\"2027-01-11T08:00:00+01:00\",\"valueQuantity\":{\"value\":"
        + value
        + ",\"system\":\"http://unitsofmeasure.org\",\"code\":\"ng/mL\"}}";
  }

  private static ObjectNode sent(String file) {
    return JsonNodeFactory.instance.objectNode().put("file", file);
  }

  private static String taken(Asker asker, String path, String file) {
    Asker.Got seen = asker.post(path + "/fhir/preview", sent(file).toString()).mustBe(200);
    Asker.Got saved =
        asker
            .post(path + "/fhir", sent(file).put("preview", seen.text("/preview")).toString())
            .mustBe(201);
    assertThat(saved.body(), is(seen.body()));
    return saved.json().at("/results/0/outcome").asText();
  }

  @Test
  void aCorrectionNamesTheOldEntryAndBothStay() {
    try (Desk desk = Desk.withUsers()) {
      Asker asker = desk.asker("anna", Role.KEEPER);
      World world = World.of(asker, "one");
      String path = "/v1/cycles/" + world.part("cycle");
      assertThat(taken(asker, path, observation("final", "3.2")), is("new"));
      assertThat(taken(asker, path, observation("final", "3.2")), is("duplicate"));
      assertThat(taken(asker, path, observation("corrected", "2.3")), is("correction"));
      assertThat(statuses(asker, path), is(List.of("final", "corrected")));
      assertThat(taken(asker, path, observation("entered-in-error", "2.3")), is("retraction"));
      assertThat(taken(asker, path, observation("final", "3.2")), is("left-out"));
      assertThat(statuses(asker, path), is(List.of("final", "entered-in-error")));
      JsonNode entries = asker.get(path + "/entries").mustBe(200).json().path("items");
      assertThat(
          entries.findValuesAsText("change"),
          is(List.of("added", "added", "corrected", "retracted")));
      assertThat(taken(asker, path, observation("amended", "2.4")), is("correction"));
      assertThat(statuses(asker, path), is(List.of("final", "corrected")));
      JsonNode after = asker.get(path + "/entries").mustBe(200).json().path("items");
      assertThat(after.at("/4/change").asText(), is("corrected"));
      assertThat(after.at("/4/replaces"), is(after.at("/3/number")));
      assertThat(after.at("/4/observation/value").asText(), is("2.4"));
      assertThat(entries.at("/2/replaces"), is(entries.at("/1/number")));
      assertThat(entries.at("/3/replaces"), is(entries.at("/2/number")));
      assertThat(entries.at("/2/reason").asText(), is("The laboratory corrected it."));
      assertThat(entries.at("/1/observation/value").asText(), is("3.2"));
    }
  }

  private static List<String> statuses(Asker asker, String path) {
    Asker.Got got = asker.get(path + "/fhir").mustBe(200);
    assertThat(got.header("content-type"), startsWith("application/fhir+json"));
    return got.json().path("entry").findValuesAsText("status");
  }

  @Test
  void onlyWhatWasLookedAtIsEntered() {
    try (Desk desk = Desk.withUsers()) {
      Asker asker = desk.asker("anna", Role.KEEPER);
      World world = World.of(asker, "one");
      String path = "/v1/cycles/" + world.part("cycle");
      String preview =
          asker
              .post(path + "/fhir/preview", sent(observation("final", "3.2")).toString())
              .mustBe(200)
              .text("/preview");
      asker
          .post(
              path + "/fhir", sent(observation("final", "3.3")).put("preview", preview).toString())
          .mustBe(409);
      assertThat(asker.get(path + "/entries").json().path("items").size(), is(1));
      Asker.Got refused =
          asker.post(path + "/fhir/preview", sent("{\"resourceType\":\"X\"}").toString());
      assertThat(refused.mustBe(422).text("/problems/0/path"), is("/resourceType"));
      assertThat(
          asker.post(path + "/fhir/preview", sent("").toString()).text("/problems/0/path"),
          is("/file"));
    }
  }
}
