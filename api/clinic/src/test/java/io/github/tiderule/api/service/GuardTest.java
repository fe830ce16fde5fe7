package io.github.tiderule.api.service;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.lessThanOrEqualTo;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.startsWith;

import io.github.tiderule.api.access.People;
import io.github.tiderule.api.access.Person;
import io.github.tiderule.api.access.Role;
import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class GuardTest {

  /** The status of a request written by hand, since clients do not let one choose the host. */
  private static int status(int port, String... lines) throws IOException {
    try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port)) {
      String request = String.join("\r\n", lines) + "\r\nConnection: close\r\n\r\n";
      socket.getOutputStream().write(request.getBytes(StandardCharsets.US_ASCII));
      String answer = new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
      return Integer.parseInt(answer.split(" ", 3)[1]);
    }
  }

  @Test
  void withoutUsersOnlyThisMachineByItsOwnNames() throws IOException {
    try (Desk desk = Desk.open()) {
      int port = desk.service.port();
      String ask = "GET /v1/females HTTP/1.1";
      for (String own : List.of("127.0.0.1:" + port, "localhost:" + port, "[::1]:" + port)) {
        assertThat(own, status(port, ask, "Host: " + own), is(200));
      }
      for (String other :
          List.of("evil.example:" + port, "127.0.0.1", "127.0.0.1:1", "10.0.0.1:" + port)) {
        assertThat(other, status(port, ask, "Host: " + other), is(403));
      }
      String host = "Host: localhost:" + port;
      assertThat(status(port, ask, host, "Origin: http://localhost:" + port), is(200));
      for (String other :
          List.of(
              "http://evil.example", "null", "http://localhost:1", "https://localhost:" + port)) {
        assertThat(other, status(port, ask, host, "Origin: " + other), is(403));
      }
      assertThat(status(port, ask, host, "Sec-Fetch-Site: same-origin"), is(200));
      assertThat(status(port, ask, host, "Sec-Fetch-Site: cross-site"), is(403));
    }
  }

  @Test
  void everyAnswerTellsBrowsersToBeCareful() {
    try (Desk desk = Desk.open()) {
      for (Asker.Got got :
          List.of(
              desk.asker().get("/v1/health"),
              desk.asker().post("/v1/advice", "{"),
              desk.asker().get("/v1/openapi"))) {
        assertThat(got.header("X-Content-Type-Options"), is("nosniff"));
        assertThat(got.header("Content-Security-Policy"), startsWith("default-src 'none'"));
        assertThat(got.header("X-Frame-Options"), is("DENY"));
        assertThat(got.header("Referrer-Policy"), is("no-referrer"));
        assertThat(got.header("Cache-Control"), is("no-store"));
        assertThat(got.header("Server"), is(""));
      }
    }
  }

  private static Asker.Got signIn(Desk desk, String name, String password) {
    return desk.asker()
        .post("/v1/session", "{\"name\": \"" + name + "\", \"password\": \"" + password + "\"}");
  }

  @Test
  void aChangeWithASessionNeedsItsTokenAndItsOwnSite() {
    try (Desk desk = Desk.withUsers()) {
      desk.asker("anna", Role.KEEPER);
      Asker.Got got = signIn(desk, "anna", Desk.PASSWORD).mustBe(201);
      assertThat(got.header("Set-Cookie"), containsString("HttpOnly"));
      assertThat(got.header("Set-Cookie"), containsString("SameSite=Strict"));
      Asker session = desk.asker().with("Cookie", got.header("Set-Cookie").split(";", 2)[0]);
      session.get("/v1/females").mustBe(200);
      session.post("/v1/females", "{}").mustBe(403);
      session.with("X-CSRF-Token", "guessed").post("/v1/females", "{}").mustBe(403);
      Asker whole = session.with("X-CSRF-Token", got.text("/csrf"));
      whole.post("/v1/females", "{}").mustBe(201);
      whole.with("Origin", "http://evil.example").post("/v1/females", "{}").mustBe(403);
      whole
          .with("Origin", "http://127.0.0.1:" + desk.service.port())
          .post("/v1/females", "{}")
          .mustBe(201);
      whole.delete("/v1/session").mustBe(204);
      whole.get("/v1/females").mustBe(401);
    }
  }

  @Test
  void aSessionEndsByItself() {
    try (Desk desk = Desk.withUsers()) {
      desk.asker("anna", Role.KEEPER);
      Asker.Got got = signIn(desk, "anna", Desk.PASSWORD).mustBe(201);
      Asker session = desk.asker().with("Cookie", got.header("Set-Cookie").split(";", 2)[0]);
      desk.clock.move(Duration.ofHours(11));
      session.get("/v1/session").mustBe(200);
      desk.clock.move(Duration.ofHours(2));
      session.get("/v1/session").mustBe(401);
    }
  }

  @Test
  void guessingPasswordsTakesEverLonger() {
    try (Desk desk = Desk.withUsers()) {
      desk.asker("anna", Role.KEEPER);
      for (int i = 0; i < 5; i++) {
        signIn(desk, "anna", "wrong, all of it").mustBe(401);
      }
      Asker.Got stopped = signIn(desk, "anna", Desk.PASSWORD).mustBe(429);
      int wait = Integer.parseInt(stopped.header("Retry-After"));
      assertThat(wait, greaterThan(25));
      desk.clock.move(Duration.ofSeconds(wait));
      signIn(desk, "anna", "wrong again").mustBe(401);
      int longer =
          Integer.parseInt(signIn(desk, "anna", Desk.PASSWORD).mustBe(429).header("Retry-After"));
      assertThat(longer, greaterThan(wait));
      assertThat(longer, lessThanOrEqualTo(3601));
      desk.clock.move(Duration.ofSeconds(longer));
      signIn(desk, "anna", Desk.PASSWORD).mustBe(201);
      String log = desk.asker("anna", Role.KEEPER).get("/v1/audit").mustBe(200).body();
      assertThat(log, containsString("sign-in-failed"));
      assertThat(log, containsString("signed-in"));
    }
  }

  @Test
  void manyGuessesAtOnceAreNoMoreThanOneAfterTheOther() {
    try (Desk desk = Desk.withUsers()) {
      desk.add("anna", Role.KEEPER);
      long looked =
          IntStream.range(0, 48)
              .parallel()
              .mapToObj(i -> signIn(desk, "anna", "wrong, all of it " + i))
              .filter(got -> got.status() == 401)
              .count();
      assertThat(looked, is(5L));
    }
  }

  @Test
  void aNameTooLongForAnybodyIsWrongAndNoMore() throws IOException {
    try (Desk desk = Desk.withUsers()) {
      desk.add("anna", Role.KEEPER);
      String form = "name=" + "x".repeat(300_000) + "&password=" + "y".repeat(300_000);
      int port = desk.service.port();
      assertThat(
          status(
              port,
              "POST /sign-in HTTP/1.1",
              "Host: localhost:" + port,
              "Content-Type: application/x-www-form-urlencoded",
              "Connection: close",
              "Content-Length: " + form.length(),
              "",
              form),
          is(401));
      signIn(desk, "anna", Desk.PASSWORD).mustBe(201);
    }
  }

  @Test
  void aTokenWorksUntilItIsRevokedAndIsNotInTheRecord() {
    try (Desk desk = Desk.withUsers()) {
      Asker anna = desk.asker("anna", Role.KEEPER);
      Asker.Got issued = anna.post("/v1/tokens", "{\"label\": \"desk\"}").mustBe(201);
      String secret = issued.text("/secret");
      Asker program = desk.asker().with("Authorization", "Bearer " + secret);
      program.get("/v1/females").mustBe(200);
      List<String> kept =
          desk.store.read(
              ledger ->
                  ledger
                      .handle()
                      .createQuery("SELECT digest FROM api_token")
                      .mapTo(String.class)
                      .list());
      assertThat(kept.toString(), not(containsString(secret.substring(4))));
      anna.delete(issued.header("Location")).mustBe(204);
      program.get("/v1/females").mustBe(401);
    }
  }

  @Test
  void aClosedAccountOpensNothing() {
    try (Desk desk = Desk.withUsers()) {
      Asker anna = desk.asker("anna", Role.KEEPER);
      anna.get("/v1/females").mustBe(200);
      Person person = desk.store.read(ledger -> People.of(ledger).named("anna")).orElseThrow();
      desk.store.change(
          ledger -> {
            People.of(ledger).close(person, Desk.START);
            return true;
          });
      anna.get("/v1/females").mustBe(401);
      signIn(desk, "anna", Desk.PASSWORD).mustBe(401);
    }
  }

  @Test
  void onlyAVetSigns() {
    try (Desk desk = Desk.withUsers()) {
      Asker anna = desk.asker("anna", Role.KEEPER);
      World annas = World.of(anna, "anna");
      String reviews = "/v1/advice/" + annas.part("advice") + "/reviews";
      anna.post(reviews, "{\"verdict\": \"agreed\"}").mustBe(403);
      Asker vera = desk.asker("vera", Role.VET);
      vera.post(reviews, "{\"verdict\": \"agreed\"}").mustBe(404);
      anna.with("If-Match", "\"1\"")
          .put("/v1/females/" + annas.part("female") + "/sharing", "{\"clinic\": true}")
          .mustBe(200);
      vera.post(reviews, "{\"verdict\": \"disagreed\"}").mustBe(422);
      vera.post(reviews, "{\"verdict\": \"agreed\"}").mustBe(201);
      assertThat(anna.get(reviews).text("/items/0/by"), is("vera"));
    }
  }
}
