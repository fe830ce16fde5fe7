package io.github.tiderule.api.service;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.hasItems;
import static org.hamcrest.Matchers.is;

import biweekly.Biweekly;
import biweekly.component.VEvent;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** The calendar of a season, by the advice given on it. */
class CalendarRoutesTest {

  private static final String SEASON =
      """
      {"zone": "Europe/Paris", "firstBlood": {"on": "2027-01-03", "certainty": "seen"}}\
      """;

  private static Map<String, VEvent> events(Asker.Got got) {
    Map<String, VEvent> byUid = new TreeMap<>();
    for (VEvent event : Biweekly.parse(got.mustBe(200).body()).first().getEvents()) {
      byUid.put(event.getUid().getValue(), event);
    }
    return byUid;
  }

  private static VEvent of(Map<String, VEvent> events, String uid) {
    return Objects.requireNonNull(events.get(uid), uid);
  }

  private static Instant start(VEvent event) {
    return event.getDateStart().getValue().toInstant();
  }

  private static String observation(String id, String day, String value) {
    return """
        {"id": "%s", "kind": "progesterone", "at": "2027-01-%sT08:00:00+01:00", "value": %s,
         "unit": "ng/mL", "method": "clia", "laboratory": "A"}
        """
        .formatted(id, day, value);
  }

  @Test
  void theCalendarFollowsTheAdviceAndNothingElse() {
    try (Desk desk = Desk.open()) {
      Asker asker = desk.asker();
      String female = asker.post("/v1/females", "{\"name\": \"Ivy, mine\"}").text("/key");
      String cycle =
          asker.post("/v1/females/" + female + "/cycles", SEASON).mustBe(201).text("/key");
      String path = "/v1/cycles/" + cycle;
      Asker.Got none = asker.get(path + "/calendar.ics").mustBe(200);
      assertThat(none.header("content-type"), containsString("text/calendar"));
      assertThat(none.body(), containsString("BEGIN:VJOURNAL"));

      asker.post(path + "/observations", observation("p1", "11", "1.4")).mustBe(201);
      asker.post(path + "/observations", observation("p2", "13", "2.6")).mustBe(201);
      assertThat(asker.get(path + "/calendar.ics").body(), is(none.body()));

      asker.post(path + "/advice", "{}").mustBe(201);
      Map<String, VEvent> before = events(asker.get(path + "/calendar.ics"));
      String breeding = cycle + "-breeding-1@tiderule.github.io";
      assertThat(
          before.keySet(),
          hasItems(
              breeding,
              cycle + "-whelping-1@tiderule.github.io",
              cycle + "-test-1@tiderule.github.io"));
      assertThat(of(before, breeding).getSummary().getValue(), is("Ivy, mine: breed"));
      assertThat(of(before, breeding).getSequence().getValue(), is(0));

      asker
          .with("If-Match", "*")
          .post(
              path + "/observations/p2/corrections",
              "{\"reason\": \"misread\", \"observation\": " + observation("p2", "13", "0.8") + "}")
          .mustBe(201);
      asker.post(path + "/advice", "{}").mustBe(201);
      Map<String, VEvent> after = events(asker.get(path + "/calendar.ics"));
      assertThat(after.keySet().containsAll(before.keySet()), is(true));
      String whelping = cycle + "-whelping-1@tiderule.github.io";
      assertThat(of(after, whelping).getSequence().getValue(), is(1));
      assertThat(start(of(after, whelping)).isAfter(start(of(before, whelping))), is(true));
      assertThat(List.of(desk.faults.toArray()), is(List.of()));
    }
  }

  @Test
  void aClockThatWentBackNamesHerAllTheSame() {
    try (Desk desk = Desk.open()) {
      Asker asker = desk.asker();
      String female =
          asker
              .post(
                  "/v1/females",
                  """
                  {"name": "Ivy", "earlierCycles": [{"firstBloodOn": "2026-06-20"}]}""")
              .mustBe(201)
              .text("/key");
      String cycle =
          asker.post("/v1/females/" + female + "/cycles", SEASON).mustBe(201).text("/key");
      asker
          .post("/v1/cycles/" + cycle + "/observations", observation("p1", "11", "1.4"))
          .mustBe(201);
      asker.post("/v1/cycles/" + cycle + "/advice", "{}").mustBe(201);
      desk.clock.move(Duration.ofDays(-300));
      assertThat(
          asker.get("/v1/cycles/" + cycle + "/calendar.ics").mustBe(200).body(),
          containsString("Ivy"));
    }
  }
}
