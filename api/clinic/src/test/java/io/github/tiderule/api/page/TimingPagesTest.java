package io.github.tiderule.api.page;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.not;

import io.github.tiderule.api.access.Role;
import io.github.tiderule.api.service.Desk;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;

/** Whose whelpings somebody sees. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class TimingPagesTest {

  private static final HttpClient HTTP = HttpClient.newHttpClient();

  private final Desk desk = Desk.withUsers();
  private String anna = "";
  private String female = "";

  @BeforeAll
  void whelp() throws IOException, InterruptedException {
    anna = desk.token("anna", Role.KEEPER);
    female = part(send("POST", "/females/new", anna, "once=t1&name=Alder"), 2);
    String season =
        part(
            send(
                "POST",
                "/females/" + female + "/seasons/new",
                anna,
                "once=t2&zone=Europe/Vienna&on=2026-11-01&certainty=seen"),
            2);
    int number = 3;
    for (String value :
        new String[] {
          "1.2&at=2026-11-09T08:00", "2.2&at=2026-11-10T08:00", "5.8&at=2026-11-12T08:00"
        }) {
      send(
          "POST",
          "/seasons/" + season + "/enter/progesterone",
          anna,
          "once=t" + number++ + "&unit=ng/mL&value=" + value);
    }
    HttpResponse<String> saved =
        send(
            "POST",
            "/seasons/" + season + "/outcome",
            anna,
            "once=t9&was=1&pregnant=yes&whelpedOn=2027-01-12&litterSize=6&pupsBornAlive=5");
    assertThat(saved.body(), saved.statusCode(), is(303));
  }

  @AfterAll
  void close() {
    desk.close();
  }

  private static String part(HttpResponse<String> made, int number) {
    return made.headers()
        .firstValue("Location")
        .orElseThrow(() -> new AssertionError(made.body()))
        .replaceFirst("\\?.*", "")
        .split("/", -1)[number];
  }

  private HttpResponse<String> send(String method, String path, String token, String form)
      throws IOException, InterruptedException {
    return HTTP.send(
        HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + desk.service.port() + path))
            .header("Authorization", "Bearer " + token)
            .header("Accept", "text/html")
            .header("Content-Type", "application/x-www-form-urlencoded")
            .method(method, HttpRequest.BodyPublishers.ofString(form))
            .build(),
        HttpResponse.BodyHandlers.ofString());
  }

  @Test
  void herKeeperSeesForecastAndWhelping() throws IOException, InterruptedException {
    String page = send("GET", "/timing", anna, "").body();
    assertThat(page, containsString("Alder, Tue 12 Jan 2027: expected"));
    assertThat(page, containsString("1 season: median error"));
    assertThat(page, containsString("chance alone"));
  }

  @Test
  void othersSeeNothingOfHerAndWhatToDo() throws IOException, InterruptedException {
    String page = send("GET", "/timing", desk.token("bertha", Role.KEEPER), "").body();
    assertThat(page, not(containsString("Alder")));
    assertThat(page, not(containsString("median error")));
    assertThat(page, containsString("Whelping and litter"));
  }

  @Test
  void aVetSeesHerOnlyWhileSheIsShared() throws IOException, InterruptedException {
    String vera = desk.token("vera", Role.VET);
    assertThat(send("GET", "/timing", vera, "").body(), not(containsString("Alder")));
    send("POST", "/females/" + female + "/sharing", anna, "once=s1&was=1&clinic=yes");
    assertThat(send("GET", "/timing", vera, "").body(), containsString("Alder"));
    send("POST", "/females/" + female + "/sharing", anna, "once=s2&was=2&clinic=no");
    assertThat(send("GET", "/timing", vera, "").body(), not(containsString("Alder")));
  }
}
