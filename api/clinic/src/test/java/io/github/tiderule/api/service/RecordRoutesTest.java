package io.github.tiderule.api.service;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.not;

import com.fasterxml.jackson.databind.JsonNode;
import io.github.tiderule.api.access.Role;
import io.github.tiderule.format.Documents;
import io.github.tiderule.format.json.AdviceJson;
import io.github.tiderule.format.json.Layout;
import io.github.tiderule.format.problem.Problem;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** What the record does, asked over HTTP on a machine of one's own. */
class RecordRoutesTest {

  private static final String SEASON =
      """
      {"zone": "Europe/Vienna", "firstBlood": {"on": "2027-01-03", "certainty": "seen"}}\
      """;
  private static final String P1 =
      """
      {"id": "p1", "kind": "progesterone", "at": "2027-01-08T08:00:00+01:00", "value": %s,
       "unit": "ng/mL", "method": "clia", "laboratory": "A"}\
      """;

  private final Desk desk = Desk.open();
  private final Asker asker = desk.asker();

  @AfterEach
  void close() {
    desk.close();
  }

  private String cycle() {
    String female = asker.post("/v1/females", "{\"id\": \"juniper\"}").mustBe(201).text("/key");
    return "/v1/cycles/"
        + asker.post("/v1/females/" + female + "/cycles", SEASON).mustBe(201).text("/key");
  }

  @Test
  void statelessAdviceIsWhatTheLibrarySays() {
    String file = Documents.fullCycle();
    String expected = AdviceJson.text(Desk.TIDERULE.advise(Documents.read(file)), Layout.ONE_LINE);
    assertThat(asker.post("/v1/advice", file).mustBe(200).body(), is(expected));
  }

  @Test
  void aRefusalHasThePointersOfTheCommandLine() {
    String file = Documents.fullCycle("\"value\": 2.1", "\"value\": -3");
    JsonNode problems = asker.post("/v1/advice", file).mustBe(422).json().path("problems");
    List<Problem> expected = Documents.refused(file);
    assertThat(problems.size(), is(expected.size()));
    for (int i = 0; i < expected.size(); i++) {
      assertThat(problems.at("/" + i + "/path").asText(), is(expected.get(i).path()));
      assertThat(problems.at("/" + i + "/code").asText(), is(expected.get(i).code().word()));
    }
  }

  @Test
  void problemsPointIntoWhatWasSent() {
    String cycle = cycle();
    asker.post(cycle + "/observations", P1.formatted("2.1")).mustBe(201);
    String second = P1.formatted("-3").replace("p1", "p2");
    Asker.Got refused = asker.post(cycle + "/observations", second).mustBe(422);
    assertThat(refused.text("/problems/0/path"), is("/value"));
    Asker.Got correction =
        asker
            .with("If-Match", "\"1\"")
            .post(
                cycle + "/observations/p1/corrections",
                "{\"reason\": \"x\", \"observation\": " + P1.formatted("-3") + "}")
            .mustBe(422);
    assertThat(correction.text("/problems/0/path"), is("/observation/value"));
    Asker.Got female = asker.post("/v1/females", "{\"bodyMassKg\": 900}").mustBe(422);
    assertThat(female.text("/problems/0/path"), is("/bodyMassKg"));
    Asker.Got season =
        asker
            .post(
                "/v1/females/" + asker.get(cycle).text("/female") + "/cycles",
                SEASON.replace("Vienna", "Vienne"))
            .mustBe(422);
    assertThat(season.text("/problems/0/path"), is("/zone"));
  }

  @Test
  void aSeasonTakesNeitherFemaleNorObservations() {
    String female = asker.post("/v1/females", "{}").mustBe(201).text("/key");
    String with = SEASON.replaceFirst("}$", ", \"observations\": [], \"female\": {}}");
    Asker.Got refused = asker.post("/v1/females/" + female + "/cycles", with).mustBe(422);
    assertThat(refused.json().path("problems").size(), is(2));
  }

  @Test
  void aCorrectionIsANewEntryThatNamesTheOld() {
    String cycle = cycle();
    asker.post(cycle + "/observations", P1.formatted("2.1")).mustBe(201);
    desk.clock.move(Duration.ofHours(1));
    String correction = "{\"reason\": \"misread\", \"observation\": " + P1.formatted("2.4") + "}";
    Asker.Got corrected =
        asker
            .with("If-Match", "\"1\"")
            .post(cycle + "/observations/p1/corrections", correction)
            .mustBe(201);
    assertThat(corrected.text("/replaces"), is("1"));
    assertThat(corrected.text("/reason"), is("misread"));
    assertThat(corrected.text("/by"), is("local"));
    assertThat(corrected.text("/at"), is("2027-01-13T13:00:00Z"));
    asker
        .with("If-Match", "\"1\"")
        .post(cycle + "/observations/p1/corrections", correction)
        .mustBe(412);
    asker
        .with("If-Match", corrected.header("ETag"))
        .post(cycle + "/observations/p1/retractions", "{\"reason\": \"another bitch's\"}")
        .mustBe(201);
    JsonNode entries = asker.get(cycle + "/entries").mustBe(200).json().path("items");
    assertThat(entries.size(), is(3));
    assertThat(entries.at("/0/observation/value").asText(), is("2.1"));
    assertThat(entries.at("/1/observation/value").asText(), is("2.4"));
    assertThat(entries.at("/2/change").asText(), is("retracted"));
    assertThat(asker.get(cycle + "/file").text("/observations"), is(""));
    assertThat(asker.get(cycle + "/file").json().path("observations").size(), is(0));
    asker.post(cycle + "/observations", P1.formatted("2.1")).mustBe(409);
  }

  @Test
  void adviceIsKeptAndCanBeHadAgainToTheLastByte() {
    String cycle = cycle();
    asker.post(cycle + "/observations", P1.formatted("2.1")).mustBe(201);
    Asker.Got given = asker.post(cycle + "/advice", "{}").mustBe(201);
    String path = given.header("Location");
    desk.clock.move(Duration.ofDays(2));
    asker
        .with("If-Match", "\"1\"")
        .post(
            cycle + "/observations/p1/corrections",
            "{\"reason\": \"misread\", \"observation\": " + P1.formatted("12.4") + "}")
        .mustBe(201);
    assertThat(asker.get(path).mustBe(200).body(), is(given.body()));
    Asker.Got then = asker.get(path + "/cycle").mustBe(200);
    assertThat(then.text("/observations/0/value"), is("2.1"));
    assertThat(asker.post("/v1/advice", then.body()).mustBe(200).body(), is(given.body()));
    assertThat(asker.get(path + "/reproduction").text("/identical"), is("true"));
    assertThat(asker.get(path + "/trace").json().path("trace"), is(given.json().path("trace")));
    Asker.Got now = asker.post(cycle + "/advice", "{}").mustBe(201);
    assertThat(now.body(), is(not(given.body())));
    JsonNode history = asker.get(cycle + "/advice").json().path("items");
    assertThat(history.size(), is(2));
    assertThat(history.at("/0/stamp"), is(given.json().path("stamp")));
  }

  @Test
  void adviceOfOtherRulesIsNotCalledTheSame() {
    String cycle = cycle();
    String path = asker.post(cycle + "/advice", "{}").mustBe(201).header("Location");
    desk.store.change(
        ledger ->
            ledger
                .handle()
                .execute(
                    "UPDATE advice SET answer = replace(answer, 'sha256:', 'sha256:0'),"
                        + " rules = 'sha256:0'"));
    Asker.Got again = asker.get(path + "/reproduction").mustBe(200);
    assertThat(again.text("/identical"), is("false"));
    assertThat(again.text("/given/rules"), is("sha256:0"));
  }

  @Test
  void aRequestThatComesTwiceIsCarriedOutOnce() {
    Asker once = asker.with("Idempotency-Key", "a1");
    Asker.Got first = once.post("/v1/females", "{\"name\": \"Ash\"}").mustBe(201);
    Asker.Got second = once.post("/v1/females", "{\"name\": \"Ash\"}").mustBe(201);
    assertThat(second.body(), is(first.body()));
    assertThat(second.header("Location"), is(first.header("Location")));
    assertThat(second.header("ETag"), is(first.header("ETag")));
    assertThat(asker.get("/v1/females").json().path("items").size(), is(1));
    once.post("/v1/females", "{\"name\": \"Elm\"}").mustBe(422);
    asker.with("Idempotency-Key", "x".repeat(201)).post("/v1/females", "{}").mustBe(400);
    desk.clock.move(Duration.ofDays(8));
    once.post("/v1/females", "{\"name\": \"Ash\"}").mustBe(201);
    assertThat(asker.get("/v1/females").json().path("items").size(), is(2));
  }

  @Test
  void aRefusedRequestDoesNotUseItsKeyUp() {
    Asker once = asker.with("Idempotency-Key", "a1");
    once.post("/v1/females", "{\"bodyMassKg\": -1}").mustBe(422);
    once.post("/v1/females", "{\"bodyMassKg\": 11}").mustBe(201);
  }

  @Test
  void pagesMeetWithoutGapOrOverlap() {
    for (int i = 0; i < 7; i++) {
      asker.post("/v1/females", "{\"id\": \"f" + i + "\"}").mustBe(201);
    }
    List<String> seen = new ArrayList<>();
    String path = "/v1/females?limit=3";
    int pages = 0;
    while (!path.isEmpty()) {
      JsonNode page = asker.get(path).mustBe(200).json();
      page.path("items").forEach(item -> seen.add(item.at("/female/id").asText()));
      path =
          page.path("next").isNull()
              ? ""
              : "/v1/females?limit=3&after=" + page.path("next").asText();
      pages++;
    }
    assertThat(seen, is(List.of("f0", "f1", "f2", "f3", "f4", "f5", "f6")));
    assertThat(pages, is(3));
    asker.get("/v1/females?after=x'--").mustBe(400);
  }

  @Test
  void aSeasonLongOverIsLookedAtFromItsOwnTime() {
    String female = asker.post("/v1/females", "{}").mustBe(201).text("/key");
    String old =
        "{\"zone\": \"Europe/Vienna\","
            + " \"firstBlood\": {\"on\": \"2024-01-03\", \"certainty\": \"seen\"}}";
    String path = "/v1/females/" + female + "/cycles";
    asker.post(path, old).mustBe(422);
    String dated = old.replaceFirst("\\{", "{\"asOf\": \"2024-01-20T12:00:00+01:00\",");
    String cycle = "/v1/cycles/" + asker.post(path, dated).mustBe(201).text("/key");
    asker.post(cycle + "/observations", P1.formatted("2.1").replace("2027", "2024")).mustBe(201);
    Asker.Got advice = asker.post(cycle + "/advice", "").mustBe(201);
    assertThat(advice.text("/asOf"), containsString("2024-01-20T12:00:00+01:00"));
  }

  @Test
  void idsOfEveryKindCanBeNamedInAPath() {
    String cycle = cycle();
    String odd = P1.formatted("2.1").replace("\"p1\"", "\"p 1/ä?\"");
    String location = asker.post(cycle + "/observations", odd).mustBe(201).header("Location");
    assertThat(asker.get(location).mustBe(200).text("/id"), is("p 1/ä?"));
  }

  @Test
  void noFaultIsHidden() {
    assertThat(desk.faults, is(List.of()));
  }

  @Test
  void whatWasSaidBeforeCanBeReadAgain() {
    try (Desk desk = Desk.withUsers()) {
      Asker asker = desk.asker("anna", Role.KEEPER);
      World world = World.of(asker, "one");
      String female = "/v1/females/" + world.part("female");
      String tag = asker.get(female).header("ETag");
      asker.with("If-Match", tag).put(female, "{\"name\": \"Later\"}").mustBe(200);
      Asker.Got all = asker.get(female + "/revisions").mustBe(200);
      assertThat(all.json().path("items").size(), is(2));
      assertThat(all.text("/items/0/female/name"), is("Secret of one"));
      assertThat(all.text("/items/1/female/name"), is("Later"));
      assertThat(all.text("/items/1/version"), is("2"));
      assertThat(all.text("/items/1/by"), is("anna"));
      Asker.Got first = asker.get(female + "/revisions?limit=1").mustBe(200);
      Asker.Got second =
          asker.get(female + "/revisions?limit=1&after=" + first.text("/next")).mustBe(200);
      assertThat(second.text("/items/0/version"), is("2"));
      assertThat(second.json().path("next").isNull(), is(true));
      Asker.Got season = asker.get("/v1/cycles/" + world.part("cycle") + "/revisions").mustBe(200);
      assertThat(season.text("/items/0/season/zone"), is("Europe/Vienna"));
    }
  }
}
