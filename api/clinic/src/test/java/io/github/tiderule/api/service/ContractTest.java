package io.github.tiderule.api.service;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.everyItem;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.lessThan;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.startsWith;

import com.fasterxml.jackson.databind.JsonNode;
import io.github.tiderule.api.access.Role;
import io.github.tiderule.api.service.http.Refusal;
import io.github.tiderule.api.service.http.Route;
import io.github.tiderule.api.service.http.Settings;
import io.github.tiderule.format.Documents;
import io.github.tiderule.format.cycle.CycleFile;
import java.net.InetAddress;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The document and the service, each held to the other. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class ContractTest {

  private final Desk desk = Desk.withUsers();
  private int worlds;

  @AfterAll
  void close() {
    desk.close();
  }

  static List<Contract.Operation> operations() {
    return Contract.operations();
  }

  private World world(Asker owner) {
    return World.of(owner, "world " + worlds++);
  }

  /** A user fit for an operation: a vet may do what a keeper may, and more. */
  private Asker anna() {
    return desk.asker("anna", Role.VET);
  }

  @Test
  void everyRouteIsInTheDocumentAndTheOtherWayRound() {
    TreeSet<String> routed = new TreeSet<>();
    Settings settings = new Settings(InetAddress.getLoopbackAddress(), 0, true, false, Desk.LIMITS);
    for (Route route : Service.routes(settings, new Metrics())) {
      routed.add(route.method() + " " + route.path());
    }
    TreeSet<String> documented = new TreeSet<>();
    operations().forEach(operation -> documented.add(operation.toString()));
    assertThat(documented, is(routed));
    assertThat(routed.size(), greaterThan(30));
  }

  @Test
  void everyExampleOfAnAnswerIsValid() {
    Map<String, List<String>> against = Contract.againstAnswerExamples();
    assertThat(against.size(), greaterThan(1));
    assertThat(against.toString(), against.values(), everyItem(is(List.of())));
  }

  @ParameterizedTest
  @MethodSource("operations")
  void everyExampleIsAcceptedAndAnsweredAsTheDocumentSays(Contract.Operation operation) {
    Map<String, JsonNode> examples = Contract.sent(operation);
    assertThat(operation.toString(), examples.isEmpty(), is(!operation.takesBody()));
    List<JsonNode> sent = new ArrayList<>(examples.values());
    if (sent.isEmpty()) {
      answersWell(operation, null);
    }
    for (JsonNode example : sent) {
      assertThat(Contract.againstSent(operation, example.toString()), is(List.of()));
      answersWell(operation, example.toString());
    }
  }

  private void answersWell(Contract.Operation operation, @Nullable String body) {
    Asker owner = desk.asker("keeper " + worlds, Role.VET);
    World world = world(owner);
    Asker asker = owner;
    if (operation.id().equals("signOut")) {
      asker = signedIn("keeper " + (worlds - 1));
    } else if (operation.id().equals("signIn")) {
      desk.asker("anna", Role.VET);
      asker = desk.asker();
    }
    Asker.Got got =
        world.ready(asker, operation).send(operation.method(), world.path(operation), body);
    assertThat(got.body(), got.status(), lessThan(300));
    if (operation.parameters().contains("idempotencyKey")) {
      Asker again = world.ready(asker, operation).with("Idempotency-Key", "again");
      String fresh = operation.id().equals("addObservation") ? other(body) : body;
      if (operation.id().equals("addFemale")) {
        fresh = "{\"name\": \"Another\"}";
      }
      Asker.Got first = again.send(operation.method(), world.path(operation), fresh);
      Asker.Got second = again.send(operation.method(), world.path(operation), fresh);
      assertThat(second.body(), is(first.body()));
      assertThat(second.status(), is(first.status()));
      if (first.status() < 300) {
        assertThat(second.header("Idempotent-Replayed"), is("true"));
      }
    }
  }

  private static String other(@Nullable String observation) {
    return String.valueOf(observation).replaceFirst("\"id\":\"", "\"id\":\"other-");
  }

  private Asker signedIn(String name) {
    Asker.Got got =
        desk.asker()
            .post(
                "/v1/session",
                "{\"name\": \"" + name + "\", \"password\": \"" + Desk.PASSWORD + "\"}")
            .mustBe(201);
    return desk.asker()
        .with("Cookie", got.header("Set-Cookie").replaceFirst(";.*", ""))
        .with("X-CSRF-Token", got.text("/csrf"));
  }

  @ParameterizedTest
  @MethodSource("operations")
  void everyRefusalInTheDocumentComes(Contract.Operation operation) {
    for (int status : operation.statuses()) {
      if (status < 400 || status == 503) {
        continue;
      }
      Asker.Got got = provoked(operation, status);
      assertThat(operation + ": " + got.body(), got.status(), is(status));
      assertThat(got.header("content-type"), is(Refusal.CONTENT_TYPE));
      assertThat(got.text("/status"), is("" + status));
      assertThat(got.text("/type"), startsWith("tag:"));
    }
  }

  private Asker.Got provoked(Contract.Operation operation, int status) {
    Asker anna = anna();
    World world = world(anna);
    String path = world.path(operation);
    String body = World.body(operation);
    return switch (status) {
      case 400 ->
          operation.takesBody()
              ? world.ready(anna, operation).send(operation.method(), path, "{")
              : anna.get(path + "?limit=0");
      case 401 -> unknown(operation, world, body);
      case 403 -> foreign(operation, path);
      case 404 -> notThere(operation, world, body);
      case 409 -> inTheWay(operation, world, anna);
      case 412 -> anna.with("If-Match", "\"999\"").send(operation.method(), path, body);
      case 413 ->
          world
              .ready(anna, operation)
              .send(operation.method(), path, " ".repeat(CycleFile.MOST_BYTES + 1));
      case 415 ->
          world
              .ready(anna, operation)
              .with("Content-Type", "text/plain")
              .send(operation.method(), path, body);
      case 422 -> world.ready(anna, operation).send(operation.method(), path, "{\"nonsense\": 1}");
      case 428 -> anna.send(operation.method(), path, body);
      case 429 -> tooOften(path);
      default -> throw new AssertionError(operation + ": nobody knows how to get " + status);
    };
  }

  private Asker.Got unknown(Contract.Operation operation, World world, @Nullable String body) {
    String sent =
        operation.id().equals("signIn") ? "{\"name\": \"nobody\", \"password\": \"x\"}" : body;
    return desk.asker().send(operation.method(), world.path(operation), sent);
  }

  /** In a record without users, by a name that only points to this machine. */
  private Asker.Got foreign(Contract.Operation operation, String path) {
    try (Desk open = Desk.open()) {
      return open.asker()
          .with("Origin", "http://elsewhere.example")
          .send(operation.method(), path, World.body(operation));
    }
  }

  private Asker.Got notThere(Contract.Operation operation, World world, @Nullable String body) {
    if (operation.id().equals("signOut")) {
      // a token has no session to end
      return anna().delete(world.path(operation));
    }
    String elsewhere = operation.path().replaceAll("\\{[a-z]+}", "0123456789abcdefghjkmnpqrs");
    return anna().with("If-Match", "*").send(operation.method(), elsewhere, body);
  }

  private static Asker.Got inTheWay(Contract.Operation operation, World world, Asker anna) {
    String path = world.path(operation);
    switch (operation.id()) {
      case "addFemale", "changeFemale" -> {
        String taken = "{\"id\": \"taken\"}";
        anna.post("/v1/females", taken);
        return world.ready(anna, operation).send(operation.method(), path, taken);
      }
      case "saveLaboratoryFile", "saveFhir" -> {
        anna.post(path, String.valueOf(World.body(operation))).mustBe(201);
        return anna.post(path, String.valueOf(World.body(operation)));
      }
      case "addObservation" -> {
        String body = String.valueOf(World.body(operation));
        anna.post(path, body.replace("\"p1\"", "\"p9\""));
        String cycle = path + "/p9";
        String tag = anna.get(cycle).header("ETag");
        anna.with("If-Match", tag)
            .post(cycle + "/retractions", "{\"reason\": \"a slip\"}")
            .mustBe(201);
        return anna.post(path, body.replace("\"p1\"", "\"p9\""));
      }
      default -> {
        String one = "/v1/cycles/" + world.part("cycle") + "/observations/p1";
        anna.with("If-Match", "*")
            .post(one + "/retractions", "{\"reason\": \"a slip\"}")
            .mustBe(201);
        return anna.with("If-Match", "*").send("POST", path, World.body(operation));
      }
    }
  }

  private Asker.Got tooOften(String path) {
    try (Desk other = Desk.withUsers()) {
      String wrong = "{\"name\": \"anna\", \"password\": \"wrong, all of it\"}";
      Asker.Got got = other.asker().post(path, wrong);
      for (int i = 0; i < 5; i++) {
        got = other.asker().post(path, wrong);
      }
      assertThat(Integer.parseInt(got.header("Retry-After")), greaterThan(0));
      return got;
    }
  }

  @Test
  void thePageShowsEveryOperationAndNeedsNoOtherSite() {
    String page = desk.asker().get("/v1/openapi").mustBe(200).body();
    for (Contract.Operation operation : operations()) {
      assertThat(page, containsString("<code>" + operation + "</code>"));
    }
    assertThat(page, not(containsString("<script")));
    assertThat(page.replaceAll("http-equiv", ""), not(containsString("src=")));
    assertThat(page, not(containsString("https://")));
    assertThat(
        desk.asker().get("/v1/openapi.yaml").body(), is(Documents.resource(BookRoutes.CONTRACT)));
  }
}
