package io.github.tiderule.cases.referee;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.greaterThanOrEqualTo;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.lessThanOrEqualTo;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.notNullValue;

import io.github.tiderule.engine.Tiderule;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.BreedingDay;
import io.github.tiderule.engine.advice.Plan;
import io.github.tiderule.format.cycle.CycleFile;
import io.github.tiderule.format.cycle.Reading;
import java.nio.charset.StandardCharsets;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Days, clock windows and the last safe order of a plan, against calendar arithmetic made here, in
 * zones and on days on which clocks change.
 */
class CalendarRefereeTest {

  private static final Tiderule ENGINE = Tiderule.create();
  private static final int TRANSIT_HOURS = 20;

  private static Advice advice(ZoneId zone, LocalDate firstBlood) {
    StringBuilder observations = new StringBuilder();
    double[][] values = {{6, 0.7}, {8, 1.4}, {9, 2.3}, {10, 3.4}};
    for (double[] value : values) {
      ZonedDateTime at = firstBlood.plusDays((long) value[0]).atTime(8, 30).atZone(zone);
      observations.append(observations.isEmpty() ? "" : ",");
      observations.append(
          """
          {"id": "p%d", "kind": "progesterone", "at": "%s", "value": %s, "unit": "ng/mL",
           "method": "ria", "laboratory": "A"}"""
              .formatted((int) value[0], at.toInstant(), value[1]));
    }
    String file =
        """
        {"schema": "tiderule/cycle/1", "asOf": "%s", "zone": "%s",
         "firstBlood": {"on": "%s", "certainty": "seen"}, "observations": [%s],
         "breeding": {"semen": "chilled", "route": "transcervical", "doses": 1,
           "order": {"cutOff": "14:00", "transitHours": %d, "noDeliveryOn": ["SUNDAY"]}}}
        """
            .formatted(
                firstBlood.plusDays(10).atTime(12, 0).atZone(zone).toInstant(),
                zone,
                firstBlood,
                observations,
                TRANSIT_HOURS);
    Reading reading = CycleFile.read(file.getBytes(StandardCharsets.UTF_8));
    assertThat(reading.toString(), reading instanceof Reading.Read, is(true));
    return ENGINE.advise(((Reading.Read) reading).cycle());
  }

  @ParameterizedTest
  @CsvSource({
    "UTC, 2027-02-01",
    "Europe/Vienna, 2027-03-17",
    "Europe/Vienna, 2027-10-20",
    "America/New_York, 2027-03-03",
    "America/New_York, 2027-10-27",
    "Australia/Lord_Howe, 2027-03-24",
    "Australia/Sydney, 2027-09-22",
    "Asia/Kathmandu, 2027-05-05",
    "America/St_Johns, 2027-11-01",
    "Pacific/Apia, 2028-02-18",
    "Africa/Casablanca, 2027-02-03",
  })
  void daysWindowsAndOrdersAreThoseOfTheZone(ZoneId zone, LocalDate firstBlood) {
    Advice advice = advice(zone, firstBlood);
    List<BreedingDay> days = advice.breeding().days();
    assertThat(days.size(), greaterThan(3));
    for (BreedingDay day : days) {
      ZonedDateTime from = day.from().atZoneSameInstant(zone);
      ZonedDateTime to = day.to().atZoneSameInstant(zone);
      assertThat(from.toLocalDate(), equalTo(day.day()));
      assertThat(to.toLocalDate(), equalTo(day.day()));
      assertThat(from.getOffset(), equalTo(day.from().getOffset()));
      assertThat(from.toLocalTime(), greaterThanOrEqualTo(LocalTime.of(8, 0)));
      assertThat(to.toLocalTime(), lessThanOrEqualTo(LocalTime.of(20, 0)));
    }
    assertThat(days.stream().map(BreedingDay::day).distinct().count(), equalTo((long) days.size()));
    order(zone, advice);
    double sum =
        Objects.requireNonNull(advice.timing().ovulation()).byDay().stream()
            .mapToDouble(one -> one.probability())
            .sum();
    assertThat(sum, closeTo(1 - advice.timing().ovulation().noOvulationProbability(), 1e-6));
  }

  private static void order(ZoneId zone, Advice advice) {
    Plan plan = advice.breeding().plan();
    assertThat(plan, notNullValue());
    OffsetDateTime orderBy = Objects.requireNonNull(plan).orderBy();
    assertThat(orderBy, notNullValue());
    ZonedDateTime sent = Objects.requireNonNull(orderBy).atZoneSameInstant(zone);
    assertThat(sent.toLocalTime(), equalTo(LocalTime.of(14, 0)));
    ZonedDateTime arrives = sent.plus(Duration.ofHours(TRANSIT_HOURS));
    assertThat(arrives.getDayOfWeek(), not(equalTo(DayOfWeek.SUNDAY)));
    assertThat(arrives.toInstant().isAfter(plan.at().get(0).toInstant()), is(false));
    assertThat(orderBy.isBefore(advice.asOf()), is(false));
    // a day later would be too late, or arrive on a day without delivery
    ZonedDateTime next = sent.plusDays(1);
    ZonedDateTime nextArrives = next.plus(Duration.ofHours(TRANSIT_HOURS));
    boolean tooLate = nextArrives.toInstant().isAfter(plan.at().get(0).toInstant());
    boolean undelivered = nextArrives.getDayOfWeek() == DayOfWeek.SUNDAY;
    assertThat(tooLate || undelivered, is(true));
  }
}
