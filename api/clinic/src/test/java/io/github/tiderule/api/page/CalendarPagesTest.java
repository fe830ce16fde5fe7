package io.github.tiderule.api.page;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.emptyString;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.startsWith;

import io.github.tiderule.api.access.CalendarAddresses;
import io.github.tiderule.api.access.People;
import io.github.tiderule.api.access.Person;
import io.github.tiderule.api.access.Role;
import io.github.tiderule.api.record.table.Page;
import io.github.tiderule.api.service.Desk;
import java.net.http.HttpResponse;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** Addresses that calendar programs subscribe to: who has one reads her dates, and nothing else. */
class CalendarPagesTest {

  private static final Pattern SHOWN =
      Pattern.compile("value=\"http://127\\.0\\.0\\.1:\\d+(/calendar/([^/\"]+)/dates\\.ics)\"");

  private final Desk desk = Desk.withUsers();
  private final Visitor anna = new Visitor(desk, desk.token("anna", Role.KEEPER));
  private final Visitor program = Visitor.stranger(desk);

  @AfterEach
  void close() {
    desk.close();
    assertThat(desk.faults, hasSize(0));
  }

  private static Matcher shown(HttpResponse<String> page) {
    assertThat(page.body(), page.statusCode(), is(200));
    Matcher shown = SHOWN.matcher(page.body());
    assertThat(page.body(), shown.find(), is(true));
    return shown;
  }

  private static String made(Visitor keeper, String female) {
    return shown(keeper.post("/calendars", "female=" + female)).group(1);
  }

  private List<CalendarAddresses.Address> addresses(String name) {
    return desk.store.read(
        ledger -> CalendarAddresses.of(ledger).of(People.of(ledger).named(name).orElseThrow()));
  }

  private int given(String season) {
    return desk.store.read(ledger -> ledger.advices().of(season, Page.Wanted.FIRST)).items().size();
  }

  @Test
  void aProgramReadsTheDatesOfOneFemaleWithoutSigningIn() {
    String juniper = anna.female("Juniper");
    String season = anna.season(juniper);
    anna.enter(season, 12, "2.6");
    anna.season(anna.female("Bracken"));
    String path = made(anna, juniper);
    HttpResponse<String> got = program.get(path);
    assertThat(got.statusCode(), is(200));
    assertThat(got.headers().firstValue("Content-Type").orElse(""), startsWith("text/calendar"));
    assertThat(got.body(), containsString("NAME:Tiderule: Juniper\r\n"));
    assertThat(got.body(), containsString("REFRESH-INTERVAL;VALUE=DURATION:PT2H\r\n"));
    assertThat(got.body(), containsString("SUMMARY:Juniper: "));
    assertThat(got.body(), not(containsString("Bracken")));
    assertThat(got.body(), containsString("UID:" + season + "-"));
    String all = program.get(made(anna, "")).body();
    assertThat(all, containsString("NAME:Tiderule: All your females\r\n"));
    assertThat(all, containsString("SUMMARY:Juniper: "));
    assertThat(all, containsString("SUMMARY:Bracken: "));
  }

  @Test
  void whatItHasAlreadyIsNotSentAgain() {
    String juniper = anna.female("Juniper");
    String season = anna.season(juniper);
    anna.enter(season, 12, "2.6");
    String path = made(anna, juniper);
    HttpResponse<String> first = program.get(path);
    String tag = first.headers().firstValue("ETag").orElseThrow();
    assertThat(first.headers().firstValue("Cache-Control").orElse(""), is("private, no-cache"));
    for (String said : List.of(tag, "W/" + tag, "\"x\", " + tag, "*")) {
      HttpResponse<String> again = program.get(path, "If-None-Match", said);
      assertThat(said, again.statusCode(), is(304));
      assertThat(again.body(), is(emptyString()));
      assertThat(again.headers().firstValue("ETag"), is(Optional.of(tag)));
    }
    assertThat(program.get(path, "If-None-Match", "\"x\"").statusCode(), is(200));
    anna.enter(season, 13, "4.4");
    HttpResponse<String> moved = program.get(path, "If-None-Match", tag);
    assertThat(moved.statusCode(), is(200));
    assertThat(moved.headers().firstValue("ETag").orElseThrow(), is(not(tag)));
  }

  @Test
  void theCalendarFollowsByItselfAsDaysPass() {
    String juniper = anna.female("Juniper");
    String season = anna.season(juniper);
    String path = made(anna, juniper);
    assertThat(given(season), is(0));
    assertThat(program.get(path).body(), containsString("BEGIN:VEVENT"));
    assertThat(given(season), is(1));
    desk.clock.move(Duration.ofMinutes(10));
    program.get(path);
    assertThat("once a day is enough", given(season), is(1));
    desk.clock.move(Duration.ofDays(1));
    program.get(path);
    assertThat(given(season), is(2));
    desk.clock.move(Duration.ofDays(200));
    program.get(path);
    assertThat("a season long over stays as it is", given(season), is(2));
    desk.clock.move(Duration.ofDays(200));
    assertThat(program.get(path).body(), not(containsString(season)));
  }

  @Test
  void theSecretIsShownOnceAndNotKept() {
    String form = "once=calendar-1&female=";
    HttpResponse<String> first = anna.postAgain("/calendars", form);
    String secret = shown(first).group(2);
    assertThat(secret.length(), is(43));
    HttpResponse<String> again = anna.postAgain("/calendars", form);
    assertThat(again.statusCode(), is(303));
    assertThat(addresses("anna"), hasSize(1));
    assertThat(anna.get("/calendars").body(), not(containsString(secret)));
    for (String table : List.of("calendar_address", "kept_answer", "audit")) {
      List<String> rows =
          desk.store.read(
              ledger ->
                  ledger
                      .handle()
                      .createQuery("SELECT * FROM " + table)
                      .mapToMap()
                      .map(Object::toString)
                      .list());
      assertThat(rows.toString(), rows.isEmpty(), is(false));
      assertThat(rows.toString(), not(containsString(secret)));
    }
  }

  @Test
  void aRevokedAddressIsAsUnknownAsOneThatNeverWas() {
    String path = made(anna, "");
    program.get(path);
    CalendarAddresses.Address address = addresses("anna").get(0);
    assertThat(address.usedAt(), is(desk.clock.instant()));
    assertThat(anna.get("/calendars").body(), containsString("Last used"));
    Visitor bertha = new Visitor(desk, desk.token("bertha", Role.KEEPER));
    String revoke = "/calendars/" + address.key() + "/revoke";
    assertThat(bertha.post(revoke, "").statusCode(), is(404));
    assertThat(program.get(path).statusCode(), is(200));
    assertThat(anna.post(revoke, "").statusCode(), is(303));
    HttpResponse<String> gone = program.get(path);
    HttpResponse<String> never = program.get("/calendar/" + "x".repeat(43) + "/dates.ics");
    assertThat(gone.statusCode(), is(404));
    assertThat(never.statusCode(), is(404));
    assertThat(gone.body(), is(never.body()));
    assertThat(addresses("anna"), hasSize(0));
  }

  @Test
  void itNeverShowsWhatAnotherKeeps() {
    String juniper = anna.female("Juniper");
    anna.season(juniper);
    anna.post("/females/" + juniper + "/sharing", "was=1&clinic=yes");
    Visitor vera = new Visitor(desk, desk.token("vera", Role.VET));
    assertThat(vera.get("/females/" + juniper).statusCode(), is(200));
    assertThat(vera.post("/calendars", "female=" + juniper).statusCode(), is(403));
    assertThat(program.get(made(vera, "")).body(), not(containsString("Juniper")));
    Visitor bertha = new Visitor(desk, desk.token("bertha", Role.KEEPER));
    assertThat(bertha.post("/calendars", "female=" + juniper).statusCode(), is(404));
    assertThat(bertha.get("/calendars").body(), not(containsString("Juniper")));
    Visitor rita = new Visitor(desk, desk.token("rita", Role.READER));
    assertThat(rita.get("/calendars").statusCode(), is(403));
  }

  @Test
  void whoseAccountIsClosedIsReadNoMore() {
    anna.season(anna.female("Juniper"));
    String path = made(anna, "");
    desk.store.change(
        ledger -> {
          Person person = People.of(ledger).named("anna").orElseThrow();
          People.of(ledger).close(person, desk.clock.instant());
          return true;
        });
    assertThat(program.get(path).statusCode(), is(404));
  }
}
