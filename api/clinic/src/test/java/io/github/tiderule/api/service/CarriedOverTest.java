package io.github.tiderule.api.service;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.not;

import io.github.tiderule.api.access.Role;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** How a past season in the record moves the answer of the next, asked over HTTP. Invented. */
class CarriedOverTest {

  private static final String PAST =
      """
      {"asOf": "2026-08-01T12:00:00+02:00", "zone": "Europe/Vienna",
       "firstBlood": {"on": "2026-05-01", "certainty": "seen"}%s}\
      """;
  private static final String WHELPED =
      ", \"outcome\": {\"pregnant\": true, \"whelpedOn\": \"%s\", \"litterSize\": 6}";
  private static final String PRESENT =
      """
      {"zone": "Europe/Vienna", "firstBlood": {"on": "2027-01-08", "certainty": "seen"}}\
      """;
  private static final String SMEAR =
      """
      {"id": "%s", "kind": "cytology", "at": "2026-05-%sT08:00:00+02:00",
       "cornifiedPercent": %d, "neutrophils": "%s"}\
      """;

  private final Desk desk = Desk.withUsers();
  private final Asker anna = desk.asker("anna", Role.KEEPER);

  @AfterEach
  void close() {
    desk.close();
  }

  private static String female(Asker asker, String document) {
    return "/v1/females/" + asker.post("/v1/females", document).mustBe(201).text("/key");
  }

  private static String season(Asker asker, String female, String document) {
    return "/v1/cycles/" + asker.post(female + "/cycles", document).mustBe(201).text("/key");
  }

  private static Asker.Got advice(Asker asker, String season) {
    return asker.post(season + "/advice", "{}").mustBe(201);
  }

  private static OffsetDateTime ovulation(Asker.Got advice) {
    return OffsetDateTime.parse(advice.text("/ovulation/median"));
  }

  private static long hours(OffsetDateTime from, OffsetDateTime to) {
    return ChronoUnit.HOURS.between(from, to);
  }

  private static List<String> rules(Asker.Got advice) {
    List<String> rules = new ArrayList<>();
    advice.json().path("trace").forEach(line -> rules.add(line.path("rule").asText()));
    return rules;
  }

  /** Ovulation about day 20 of the season before, and not about day 11. */
  @Test
  void aLateWhelpingMovesTheNextOvulationLater() {
    String alone = season(anna, female(anna, "{\"id\": \"alone\"}"), PRESENT);
    String ash = female(anna, "{\"id\": \"ash\"}");
    String present = season(anna, ash, PRESENT);
    Asker.Got before = advice(anna, present);
    assertThat(ovulation(before), is(ovulation(advice(anna, alone))));
    assertThat(rules(before).contains("FND-102"), is(false));

    season(anna, ash, PAST.formatted(WHELPED.formatted("2026-07-23")));
    Asker.Got after = advice(anna, present);
    assertThat(rules(after).contains("FND-102"), is(true));
    assertThat(hours(ovulation(before), ovulation(after)), is(greaterThan(24L)));
    assertThat(advice(anna, present).body(), is(after.body()));
    assertThat(after.body(), containsString("In the season of 2026-05-01 she whelped 83 days"));

    String kept = after.header("Location");
    assertThat(anna.get(kept + "/reproduction").text("/identical"), is("true"));
    assertThat(
        anna.get(kept + "/cycle").text("/female/earlierCycles/0/whelpedOn"), is("2026-07-23"));
    assertThat(
        "what she wrote stays as it was",
        anna.get(present + "/file").body(),
        not(containsString("earlierCycles")));
  }

  @Test
  void theShiftOfTheSmearIsCarriedBeforeTheWhelping() {
    String ash = female(anna, "{\"id\": \"ash\"}");
    String past = season(anna, ash, PAST.formatted(WHELPED.formatted("2026-07-23")));
    String present = season(anna, ash, PRESENT);
    anna.post(past + "/observations", SMEAR.formatted("a", "24", 100, "none")).mustBe(201);
    assertThat(rules(advice(anna, present)).contains("FND-101"), is(false));
    anna.post(past + "/observations", SMEAR.formatted("b", "25", 60, "few")).mustBe(201);
    Asker.Got shifted = advice(anna, present);
    assertThat(rules(shifted).contains("FND-101"), is(true));
    assertThat(rules(shifted).contains("FND-102"), is(false));
    assertThat(shifted.body(), containsString("her smear shifted 24 days after first blood"));
  }

  @Test
  void aCorrectedOutcomeReachesTheNextSeason() {
    String ash = female(anna, "{\"id\": \"ash\"}");
    String past = season(anna, ash, PAST.formatted(WHELPED.formatted("2026-07-23")));
    String present = season(anna, ash, PRESENT);
    Asker.Got late = advice(anna, present);
    anna.with("If-Match", "\"1\"")
        .put(past, PAST.formatted(WHELPED.formatted("2026-07-08")))
        .mustBe(200);
    Asker.Got early = advice(anna, present);
    assertThat(hours(ovulation(early), ovulation(late)), is(greaterThan(24L)));
    anna.with("If-Match", "\"2\"")
        .put(past, PAST.formatted(", \"outcome\": {\"pregnant\": false}"))
        .mustBe(200);
    assertThat(rules(advice(anna, present)).contains("FND-102"), is(false));
  }

  /** Typed from memory it began a day earlier. */
  @Test
  void oneTypedAndOnFileCountsOnce() {
    String typed =
        "{\"id\": \"%s\", \"earlierCycles\":"
            + " [{\"firstBloodOn\": \"2026-04-30\", \"whelpedOn\": \"2026-07-23\"}]}";
    String once = season(anna, female(anna, typed.formatted("once")), PRESENT);
    String both = female(anna, typed.formatted("both"));
    season(anna, both, PAST.formatted(WHELPED.formatted("2026-07-20")));
    Asker.Got advice = advice(anna, season(anna, both, PRESENT));
    assertThat(ovulation(advice), is(ovulation(advice(anna, once))));
    assertThat(rules(advice).stream().filter("FND-102"::equals).count(), is(1L));
  }

  @Test
  void thePastOfAnotherKeepersFemaleIsNotHers() {
    Asker bertha = desk.asker("bertha", Role.KEEPER);
    season(
        bertha,
        female(bertha, "{\"id\": \"ash\"}"),
        PAST.formatted(WHELPED.formatted("2026-07-23")));
    String present = season(anna, female(anna, "{\"id\": \"ash\"}"), PRESENT);
    Asker.Got advice = advice(anna, present);
    assertThat(rules(advice).contains("FND-102"), is(false));
    assertThat(advice.body(), not(containsString("2026-05-01")));
  }

  /** The season before is answered as if there were none after it. */
  @Test
  void aLaterSeasonTellsNothingToTheOneBefore() {
    String ash = female(anna, "{\"id\": \"ash\"}");
    String past = season(anna, ash, PAST.formatted(WHELPED.formatted("2026-07-23")));
    String alone = advice(anna, past).body();
    season(anna, ash, PRESENT);
    assertThat(advice(anna, past).body(), is(alone));
  }
}
