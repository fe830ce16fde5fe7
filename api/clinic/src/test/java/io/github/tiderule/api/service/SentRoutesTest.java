package io.github.tiderule.api.service;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.startsWith;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import io.github.tiderule.api.access.Role;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;

/** What is said of cycle files that are sent along. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class SentRoutesTest {

  private final Desk desk = Desk.withUsers();
  private final Asker asker = desk.asker("anna", Role.KEEPER);

  @AfterAll
  void close() {
    desk.close();
  }

  private static String example(String operation) {
    return Contract.sent(Contract.operation(operation)).values().iterator().next().toString();
  }

  @Test
  void manyFilesAreAnsweredOneALineAndInOrder() {
    String good = example("advise");
    Asker.Got got =
        asker
            .with("Content-Type", "application/x-ndjson")
            .post("/v1/advice", good + "\n\n{\"schema\": 7}\r\n" + good)
            .mustBe(200);
    assertThat(got.header("content-type"), startsWith("application/x-ndjson"));
    List<String> lines = got.body().lines().toList();
    assertThat(lines, hasSize(3));
    String alone = asker.post("/v1/advice", good).mustBe(200).body();
    assertThat(lines.get(0) + "\n", is(alone));
    assertThat(lines.get(1), containsString("\"line\":3"));
    assertThat(lines.get(2) + "\n", is(alone));
  }

  @Test
  void theSheetIsOnePageOfPaper() throws IOException {
    String good = example("advise");
    Asker.Got got = asker.with("Accept", "application/pdf").post("/v1/advice", good).mustBe(200);
    assertThat(got.header("content-type"), startsWith("application/pdf"));
    try (PDDocument document = Loader.loadPDF(letter(good))) {
      assertThat(document.getNumberOfPages(), is(1));
      assertThat(Math.round(document.getPage(0).getMediaBox().getWidth()), is(612));
    }
    asker.with("Accept", "application/pdf").post("/v1/advice?paper=a3", good).mustBe(400);
  }

  private byte[] letter(String cycleFile) throws IOException {
    try {
      return HttpClient.newHttpClient()
          .send(
              HttpRequest.newBuilder(
                      URI.create(
                          "http://127.0.0.1:" + desk.service.port() + "/v1/advice?paper=letter"))
                  .header("Content-Type", "application/json")
                  .header("Accept", "application/pdf")
                  .header("Authorization", "Bearer " + desk.token("anna", Role.KEEPER))
                  .POST(HttpRequest.BodyPublishers.ofString(cycleFile))
                  .build(),
              HttpResponse.BodyHandlers.ofByteArray())
          .body();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  @Test
  void whatChangedNamesTheNewResult() {
    String two = example("changes");
    JsonNode got = asker.post("/v1/changes", two).mustBe(200).json();
    assertThat(got.path("schema").asText(), is("tiderule/changes/1"));
    assertThat(got.path("nothingMoved").asBoolean(), is(false));
    assertThat(got.path("observations").toString(), containsString("p2"));
  }

  @Test
  void filesThatCannotBeComparedAreRefusedByThePlace() throws IOException {
    ObjectMapper json = new ObjectMapper();
    JsonNode two = json.readTree(example("changes"));
    String swapped =
        json.writeValueAsString(Map.of("before", two.path("after"), "after", two.path("before")));
    assertThat(
        asker.post("/v1/changes", swapped).mustBe(422).text("/problems/0/path"),
        is("/before/asOf"));
    String spoilt = two.toString().replace("\"Europe/Vienna\"", "\"Europe/Nowhere\"");
    assertThat(
        asker.post("/v1/changes", spoilt).mustBe(422).text("/problems/0/path"), is("/before/zone"));
  }

  @Test
  void theContractAloneRefersToNothingElseAndHoldsAnswers() {
    JsonNode one = desk.asker().get("/v1/openapi.json").mustBe(200).json();
    List<String> references = one.findValuesAsText("$ref");
    assertThat(references.size(), greaterThan(300));
    assertThat(
        references.stream()
            .filter(
                reference ->
                    !reference.startsWith("#/") || one.at(reference.substring(1)).isMissingNode())
            .toList(),
        is(empty()));
    assertThat(one.findValues("$id"), is(empty()));
    assertThat(one.findValues("$defs"), is(empty()));
    assertThat(one.path("paths").size(), is(Contract.paths()));
    String answer = asker.post("/v1/advice", example("advise")).mustBe(200).body();
    var schema =
        SchemaRegistry.withDefaultDialect(
                SpecificationVersion.DRAFT_2020_12,
                registry ->
                    registry.schemas(Map.of("https://one.invalid/openapi.json", one.toString())))
            .getSchema(
                SchemaLocation.of("https://one.invalid/openapi.json#/components/schemas/Advice"));
    assertThat(schema.validate(answer, InputFormat.JSON), is(empty()));
    assertThat(schema.validate("{\"schema\": 7}", InputFormat.JSON).size(), greaterThan(0));
  }
}
