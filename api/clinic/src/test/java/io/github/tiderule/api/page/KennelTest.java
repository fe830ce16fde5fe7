package io.github.tiderule.api.page;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.not;

import io.github.tiderule.api.access.Role;
import io.github.tiderule.api.service.Desk;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What a keeper types once for the kennel, and what her page says of her seasons. */
class KennelTest {

  private static final HttpClient HTTP = HttpClient.newHttpClient();
  private static final String HOURS =
      "&hours-MONDAY-from=08:00&hours-MONDAY-to=18:00&hours-WEDNESDAY-from=08:00"
          + "&hours-WEDNESDAY-to=12:00&closedOn-0-on=2027-01-06";

  private Desk desk;
  private String anna = "";
  private int once;

  @BeforeEach
  void open() {
    desk = Desk.withUsers();
    anna = desk.token("anna", Role.KEEPER);
  }

  @AfterEach
  void close() {
    desk.close();
  }

  private HttpResponse<String> send(String method, String path, String token, String form) {
    try {
      return HTTP.send(
          HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + desk.service.port() + path))
              .header("Authorization", "Bearer " + token)
              .header("Accept", "text/html")
              .header("Content-Type", "application/x-www-form-urlencoded")
              .method(method, HttpRequest.BodyPublishers.ofString(form))
              .build(),
          HttpResponse.BodyHandlers.ofString());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  private String post(String path, String form) {
    once++;
    HttpResponse<String> got = send("POST", path, anna, "once=k" + once + "&" + form);
    return got.headers()
        .firstValue("Location")
        .orElseThrow(() -> new AssertionError(got.body()))
        .replaceFirst("\\?.*", "");
  }

  private String get(String path) {
    return send("GET", path, anna, "").body();
  }

  private String female() {
    return post("/females/new", "name=Alder+(invented)").replace("/seasons/new", "");
  }

  private String season(String female, String firstBlood) {
    return post(female + "/seasons/new", "zone=Europe/Vienna&certainty=seen&on=" + firstBlood);
  }

  private void kennel() {
    post(
        "/kennel",
        "was=0&cutOff=14:00&transitHours=20&noDeliveryOn=SUNDAY&travelHours=3"
            + "&turnaroundHours=6&opensOn=MONDAY&opensOn=FRIDAY&holidays-0-on=2027-01-08"
            + HOURS);
  }

  @Test
  void typedOnceItFillsInTheFormOfEverySeason() {
    kennel();
    String again = get("/kennel");
    assertThat(again, containsString("value=\"14:00\""));
    assertThat(again, containsString("value=\"2027-01-06\""));
    String season = season(female(), "2027-01-03");
    String form = get(season + "/breeding");
    assertThat(form, containsString("name=\"cutOff\" type=\"time\" value=\"14:00\""));
    assertThat(form, containsString("name=\"travelHours\" type=\"text\" value=\"3\""));
    assertThat(form, containsString("value=\"2027-01-08\""));
    assertThat(form, containsString("name=\"weekly\""));
    // the laboratory is the same before anything is said of semen
    String file =
        send("GET", season.replace("/seasons/", "/v1/cycles/") + "/file", anna, "").body();
    assertThat(file, containsString("\"turnaroundHours\""));
  }

  @Test
  void theNumberOfTheVetStandsWhereAVetIsToBeCalled() {
    post("/kennel", "was=0&vetName=Night+clinic&vetPhone=%2B43+1+234-5678");
    assertThat(get("/kennel"), containsString("value=\"+43 1 234-5678\""));
    String season = season(female(), "2027-01-03");
    assertThat(get(season), not(containsString("tel:")));
    post(season + "/enter/sign", "sign=foul-discharge&present=yes&at=2027-01-13T08:00");
    String page = get(season);
    assertThat(page, containsString("href=\"tel:+4312345678\""));
    assertThat(page, containsString("Call Night clinic: +43 1 234-5678"));
    for (String wrong : List.of("vetPhone=call+me", "vetName=Night", "vetPhone=1%3Balert")) {
      once++;
      HttpResponse<String> got = send("POST", "/kennel", anna, "once=k" + once + "&was=1&" + wrong);
      assertThat(got.body(), got.statusCode(), is(422));
      assertThat(got.body(), containsString("id=\"fault-vetPhone\""));
    }
  }

  @Test
  void weeklyHoursAreWrittenOutWithoutTheClosedDays() {
    kennel();
    String season = season(female(), "2027-01-03");
    post(
        season + "/breeding",
        "was=1&semen=chilled&route=transcervical&cutOff=14:00&transitHours=20&weekly=yes"
            + "&available-0-from=&available-0-to=");
    String form = get(season + "/breeding");
    assertThat(form, containsString("value=\"2027-01-04T08:00\""));
    assertThat(form, containsString("value=\"2027-01-13T12:00\""));
    assertThat(form, not(containsString("value=\"2027-01-06T08:00\"")));
    assertThat(form, not(containsString("value=\"2027-01-05T08:00\"")));
  }

  @Test
  void aListThatEndsBeforeSheMayHaveOvulatedIsAskedAbout() {
    String season = season(female(), "2027-01-03");
    post(season + "/enter/progesterone", "unit=ng/mL&value=1.1&at=2027-01-11T08:00");
    String times = "was=%d&semen=fresh&route=vaginal&available-0-from=%s&available-0-to=%s";
    post(season + "/breeding", times.formatted(1, "2027-01-13T08:00", "2027-01-13T20:00"));
    assertThat(get(season), containsString("Is the list of times whole?"));
    assertThat(get(season), containsString("end on Wed 13 Jan"));
    post(season + "/breeding", times.formatted(2, "2027-01-13T08:00", "2027-02-13T20:00"));
    assertThat(get(season), not(containsString("Is the list of times whole?")));
  }

  @Test
  void aHalfTypedDayIsRefusedByItsName() {
    HttpResponse<String> got =
        send("POST", "/kennel", anna, "once=h1&was=0&hours-FRIDAY-from=08:00");
    assertThat(got.statusCode(), is(422));
    assertThat(got.body(), containsString("Type both ends of Fri"));
    got =
        send(
            "POST", "/kennel", anna, "once=h2&was=0&hours-FRIDAY-from=18:00&hours-FRIDAY-to=08:00");
    assertThat(got.body(), containsString("Fri ends before it begins"));
  }

  @Test
  void nobodyElseHasIt() {
    kennel();
    String bertha = desk.token("bertha", Role.KEEPER);
    assertThat(send("GET", "/kennel", bertha, "").body(), not(containsString("14:00")));
  }

  @Test
  void herPageLaysHerSeasonsOverEachOther() {
    String female = female();
    for (String month : new String[] {"2026-05", "2026-11"}) {
      String season = season(female, month + "-01");
      for (String value : new String[] {"1.2", "2.4", "6.1"}) {
        String day = value.equals("1.2") ? "09" : value.equals("2.4") ? "11" : "13";
        post(
            season + "/enter/progesterone",
            "unit=ng/mL&value=" + value + "&at=" + month + "-" + day + "T08:00");
      }
      post(season + "/enter/breeding", "semen=natural&route=natural&at=" + month + "-15T10:00");
    }
    String page = get(female);
    assertThat(page, containsString("Her seasons, laid over each other"));
    assertThat(page, containsString("laidphone-title"));
    assertThat(page, containsString(" day 1"));
    assertThat(page, containsString("6.1 ng/mL"));
    assertThat(page, containsString("Bred, days after"));
  }
}
