package io.github.tiderule.api.service;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.anyOf;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.lessThan;
import static org.hamcrest.Matchers.not;

import io.github.tiderule.api.access.Role;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** One keeper never sees another's data, on any route there is. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class OneKeeperTest {

  private final Desk desk = Desk.withUsers();

  @AfterAll
  void close() {
    desk.close();
  }

  static List<Contract.Operation> operations() {
    return Contract.operations().stream()
        .filter(operation -> !List.of("signIn", "signOut").contains(operation.id()))
        .toList();
  }

  private static boolean namesSomebodys(Contract.Operation operation) {
    return operation.path().contains("{") && !operation.id().equals("schema");
  }

  @ParameterizedTest
  @MethodSource("operations")
  void othersSeeNothingOfHers(Contract.Operation operation) {
    World annas = World.of(desk.asker("anna", Role.KEEPER), "anna");
    for (Asker other :
        List.of(
            desk.asker("bertha", Role.KEEPER),
            desk.asker("vera", Role.VET),
            desk.asker("rita", Role.READER))) {
      World.of(desk.asker("bertha", Role.KEEPER), "bertha");
      Asker.Got got =
          annas
              .ready(other, operation)
              .send(operation.method(), annas.path(operation), World.body(operation));
      if (namesSomebodys(operation)) {
        // a role that may not do it at all is told so, whosever it is
        assertThat(operation + ": " + got.body(), got.status(), anyOf(is(404), is(403)));
        if (operation.method().equals("GET")) {
          assertThat(got.status(), is(404));
        }
        String unknown = operation.path().replaceAll("\\{[a-z]+}", "0123456789abcdefghjkmnpqrs");
        Asker.Got nothing =
            other.with("If-Match", "*").send(operation.method(), unknown, World.body(operation));
        assertThat("as if there were none", got.body(), is(nothing.body()));
      }
      for (String key : annas.keys()) {
        assertThat(operation.toString(), got.body(), not(containsString(key)));
      }
      assertThat(got.body(), not(containsString("Secret of anna")));
      assertThat(got.body(), not(containsString("one of anna")));
    }
  }

  @ParameterizedTest
  @MethodSource("operations")
  void whatIsSharedTheClinicSeesAndNobodyElse(Contract.Operation operation) {
    if (!namesSomebodys(operation) || operation.id().equals("revokeToken")) {
      return;
    }
    Asker carla = desk.asker("carla", Role.KEEPER);
    World carlas = World.of(carla, "carla");
    String female = "/v1/females/" + carlas.part("female");
    carla
        .with("If-Match", carla.get(female).header("ETag"))
        .put(female + "/sharing", "{\"clinic\": true}")
        .mustBe(200);
    Asker.Got bertha =
        carlas
            .ready(desk.asker("bertha", Role.KEEPER), operation)
            .send(operation.method(), carlas.path(operation), World.body(operation));
    assertThat(bertha.status(), anyOf(is(404), is(403)));
    Asker.Got rita =
        carlas
            .ready(desk.asker("rita", Role.READER), operation)
            .send(operation.method(), carlas.path(operation), World.body(operation));
    if (operation.method().equals("GET")) {
      rita.mustBe(200);
    } else {
      rita.mustBe(403);
    }
    Asker.Got vera =
        carlas
            .ready(desk.asker("vera", Role.VET), operation)
            .send(operation.method(), carlas.path(operation), other(operation));
    if (List.of("changeFemale", "shareFemale").contains(operation.id())) {
      vera.mustBe(403);
    } else {
      assertThat(operation + ": " + vera.body(), vera.status(), lessThan(300));
    }
  }

  private static @Nullable String other(Contract.Operation operation) {
    String body = World.body(operation);
    return body == null || !operation.id().equals("addObservation")
        ? body
        : body.replace("\"p1\"", "\"p2\"");
  }
}
