package io.github.tiderule.api.page;

import io.github.tiderule.api.page.frame.Who;
import io.github.tiderule.api.page.plan.Documents;
import io.github.tiderule.api.record.Cycle;
import io.github.tiderule.api.record.Female;
import io.github.tiderule.api.record.Ledger;
import io.github.tiderule.api.service.Known;
import io.github.tiderule.api.service.Recording;
import io.github.tiderule.api.service.http.Call;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;

/** A female that does not exist, in the middle of a season, to look around with. */
final class DemoFemale {

  /** Where she is said to be, where the browser does not tell where its user is. */
  static final ZoneId ZONE = ZoneId.of("Europe/Berlin");

  private static final DateTimeFormatter WRITTEN =
      DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ssXXX");
  private static final LocalTime DRAWN = LocalTime.of(8, 0);

  private static final String FEMALE =
      """
      {"name": "Bramble %s", "breed": "Border Collie", "bodyMassKg": 17.5, "bornOn": "%s",
       "littersWhelped": 0, "caesareans": 0, "missedPregnancies": 0}""";
  private static final String SEASON =
      """
      {"zone": "%s", "firstBlood": {"on": "%s", "certainty": "seen"},
       "breeding": {"semen": "chilled", "route": "transcervical", "doses": 1,
        "order": {"cutOff": "14:00", "transitHours": 20, "noDeliveryOn": ["SUNDAY"]}},
       "laboratory": {"turnaroundHours": 8}}""";
  private static final String VALUE =
      """
      {"id": "p%d", "kind": "progesterone", "at": "%s", "value": %s, "unit": "ng/mL",
       "method": "elfa", "laboratory": "north"}""";
  private static final String SMEAR =
      """
      {"id": "c1", "kind": "cytology", "at": "%s", "cornifiedPercent": 90, "neutrophils": "none"}""";

  private static final List<Integer> DAYS_BACK = List.of(5, 2, 0);
  private static final List<String> VALUES = List.of("0.6", "1.3", "3.2");
  private static final int BLOOD_DAYS_BACK = 10;
  private static final int AGE_YEARS = 3;

  private DemoFemale() {}

  /** Adds her to the record, with a season that has reached the first rise. */
  static Known.Season add(Call call, Ledger ledger, ZoneId zone) {
    Recording recording = Recording.of(call, ledger);
    ZonedDateTime now = call.now().atZone(zone);
    LocalDate last =
        now.toLocalTime().isAfter(DRAWN) ? now.toLocalDate() : now.toLocalDate().minusDays(1);
    Female female =
        recording.addFemale(
            Documents.of(FEMALE.formatted(Who.INVENTED, last.minusYears(AGE_YEARS).minusDays(40))));
    Cycle cycle =
        recording.addSeason(
            female,
            Documents.of(SEASON.formatted(zone.getId(), last.minusDays(BLOOD_DAYS_BACK))),
            null);
    Known.Season season = new Known.Season(female, cycle);
    for (int i = 0; i < VALUES.size(); i++) {
      String at = WRITTEN.format(last.minusDays(DAYS_BACK.get(i)).atTime(DRAWN).atZone(zone));
      recording.add(season, Documents.of(VALUE.formatted(i + 1, at, VALUES.get(i))));
    }
    recording.add(
        season, Documents.of(SMEAR.formatted(WRITTEN.format(last.atTime(DRAWN).atZone(zone)))));
    return season;
  }
}
