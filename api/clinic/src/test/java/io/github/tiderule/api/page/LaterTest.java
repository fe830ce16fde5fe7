package io.github.tiderule.api.page;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.lessThanOrEqualTo;
import static org.hamcrest.Matchers.not;

import io.github.tiderule.api.service.Desk;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.openqa.selenium.support.ui.Select;

/** A breeder with a phone, from the day of insemination to the litter. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class LaterTest {

  private static final int PHONE = 360;

  private Browser browser;
  private Desk desk;

  @BeforeAll
  void start() {
    browser = Browser.start();
    desk = Desk.open();
    browser.at(desk.service.port());
    browser.width(PHONE);
  }

  @AfterAll
  void stop() {
    if (browser != null) {
      browser.close();
    }
    if (desk != null) {
      desk.close();
      assertThat(desk.faults, is(empty()));
    }
  }

  private String season(String name, String firstBlood) {
    return Steps.season(browser, name, firstBlood);
  }

  private void enter(String season, String value, String at) {
    browser.open(season);
    Steps.enter(browser, value, "ng/mL", at);
  }

  private void unfold() {
    browser.run("document.querySelectorAll('details').forEach(one => one.open = true)");
  }

  /** Accessible, and no wider than the phone; with pictures of it on phone and desk. */
  private void look(String name) {
    assertThat(name, browser.faults(), is(empty()));
    assertThat(name, browser.tooWide(), is(lessThanOrEqualTo(0L)));
    browser.picture("later-" + name + "-360");
    browser.width(1280);
    browser.picture("later-" + name + "-1280");
    browser.width(PHONE);
  }

  @Test
  void theSemenInHandMakesTheSheetOfTheDay() {
    String season = season("Hazel", "2026-12-31");
    enter(season, "1.2", "2027-01-09T08:00");
    enter(season, "2.2", "2027-01-10T08:00");
    enter(season, "5.6", "2027-01-12T08:00");
    enter(season, "9.0", "2027-01-13T08:00");
    browser.open(season + "/breeding");
    browser.choose("semen", "chilled");
    browser.choose("route", "transcervical");
    browser.press("Save and show the plan");
    browser.unfold("#more");
    browser.follow("Semen in hand");
    look("semen-blank");
    unfold();
    assertThat(browser.tooWide(), is(lessThanOrEqualTo(0L)));
    browser.type("arrival-collectedAt", "2027-01-11T10:00");
    browser.type("arrival-arrivedAt", "2027-01-13T11:00");
    browser.type("arrival-temperatureC", "78");
    browser.type("arrival-volumeMl", "10");
    browser.type("arrival-concentrationMillionPerMl", "30");
    browser.type("arrival-progressivelyMotilePercent", "70");
    browser.type("certificate-postThawNormalPercent", "60");
    browser.press("Save and show the sheet");
    assertThat(browser.text(".errors"), containsString("how many straws"));
    browser.type("certificate-postThawNormalPercent", "");
    browser.press("Save and show the sheet");
    assertThat(
        browser.find("#field-arrival-temperatureC").getDomAttribute("aria-invalid"), is("true"));
    assertThat(browser.text(".errors"), containsString("4 to 5 is right"));
    look("semen-refused");
    browser.type("arrival-temperatureC", "48,2");
    browser.press("Save and show the sheet");
    assertThat(browser.read("#sheet"), containsString("where sperm die"));
    browser.open(season + "/semen");
    unfold();
    browser.type("arrival-temperatureC", "9,5");
    browser.press("Save and show the sheet");
    assertThat(browser.path(), is(season));
    assertThat(browser.read("#sheet"), containsString("Checklist, in this order"));
    assertThat(browser.read("#sheet"), containsString("(vet)"));
    assertThat(browser.all("#sheet .box"), hasSize(greaterThan(5)));
    assertThat(browser.all("a[href$='/day.pdf']"), hasSize(1));
    look("sheet");
    browser.open(season + "/semen");
    assertThat(browser.find("#field-arrival-temperatureC").getDomProperty("value"), is("9.5"));
    browser.open(season + "/semen");
    unfold();
    browser.type("fractions-0-volumeMl", "2,5");
    new Select(browser.find("#field-fractions-0-fraction")).selectByValue("sperm-rich");
    browser.press("Save and show the sheet");
    browser.open(season + "/semen");
    assertThat(browser.all("[name='fractions-1-fraction']"), hasSize(1));
  }

  @Test
  void pregnancyWhelpingAndHowWellItWasForetold() {
    browser.open("/timing");
    assertThat(browser.body(), containsString("No whelping to compare yet"));
    look("timing-empty");
    String season = season("Juniper", "2026-11-03");
    enter(season, "1,2", "2026-11-11T08:00");
    enter(season, "2.2", "2026-11-12T08:00");
    enter(season, "5.8", "2026-11-14T08:00");
    browser.open(season + "/enter/breeding");
    browser.choose("semen", "natural");
    browser.choose("route", "natural");
    browser.type("at", "2026-11-15T10:00");
    browser.press("Save and show the plan");
    assertThat(browser.read("#red-flags"), containsString("Call a vet at once"));
    assertThat(browser.read("main"), containsString("Days for a planned caesarean"));
    assertThat(browser.read("main"), containsString("Before day 61 after ovulation"));
    assertThat(browser.read("main"), containsString("Too early "));
    browser.follow("Enter a result");
    browser.follow("Pregnancy scan");
    unfold();
    browser.choose("finding", "pregnant");
    browser.type("fetuses", "5");
    browser.type("innerChorionicCavityMm", "21,4; 200");
    browser.type("at", "2026-12-09T09:00");
    browser.press("Save and show the plan");
    assertThat(
        browser.find("#field-innerChorionicCavityMm").getDomAttribute("aria-invalid"), is("true"));
    look("scan-refused");
    browser.type("innerChorionicCavityMm", "21,4; 22.0");
    browser.press("Save and show the plan");
    assertThat(
        browser.read("#entries"),
        containsString("Pregnancy scan, pregnant, 5 fetuses, chorionic cavity 21.4; 22.0 mm"));
    browser.follow("Enter a result");
    browser.follow("Radiograph");
    browser.choose("skeletonSeen", "yes");
    browser.type("fetuses", "6");
    browser.type("at", "2027-01-08T09:00");
    look("radiograph");
    browser.press("Save and show the plan");
    browser.follow("Enter a result");
    browser.follow("Temperature");
    browser.type("celsius", "98,6");
    browser.type("at", "2027-01-13T09:00");
    browser.press("Save and show the plan");
    assertThat(browser.text("#fault-celsius"), containsString("°F"));
    look("temperature-refused");
    browser.type("celsius", "37,6");
    browser.press("Save and show the plan");
    assertThat(browser.read("#entries"), containsString("Temperature 37.6 °C"));
    browser.follow("Enter a result");
    browser.follow("Sign or event");
    look("signs");
    browser.choose("sign", "waters-broken");
    browser.choose("present", "yes");
    browser.type("at", "2027-01-13T10:00");
    browser.press("Save and show the plan");
    assertThat(browser.read("#entries"), containsString("Waters broken"));
    assertThat(browser.read("main"), containsString("Call a vet now; everything else waits."));
    assertThat(browser.read("#red-flags"), containsString("hard straining without a pup"));
    assertThat(browser.read("main"), containsString("Counted from ovulation, not from a mating"));
    assertThat(browser.read("main"), containsString("Radiograph, 6 pups counted"));
    assertThat(browser.read("main"), not(containsString("Days for a planned caesarean")));
    look("pregnant");
    outcome(season);
  }

  @Test
  void theCalendarOfAPregnancyStaysAfterAStop() {
    String season = season("Rowan", "2026-12-03");
    enter(season, "1.2", "2026-12-11T08:00");
    enter(season, "2.2", "2026-12-12T08:00");
    enter(season, "5.8", "2026-12-14T08:00");
    browser.open(season + "/enter/breeding");
    browser.choose("semen", "natural");
    browser.choose("route", "natural");
    browser.type("at", "2026-12-15T10:00");
    browser.press("Save and show the plan");
    calendar();
    assertThat(browser.read("main"), not(containsString("Days for a planned caesarean")));
    look("calendar");
    browser.follow("Enter a result");
    browser.follow("Sign or event");
    browser.choose("sign", "collapse");
    browser.choose("present", "yes");
    browser.type("at", "2027-01-13T10:00");
    browser.press("Save and show the plan");
    assertThat(browser.read("main"), containsString("Call a vet now; everything else waits."));
    calendar();
    look("calendar-after-a-stop");
  }

  private void calendar() {
    assertThat(browser.read("#red-flags"), containsString("vet the same day"));
    assertThat(
        browser.read("main"),
        allOf(
            containsString("Pregnancy calendar"),
            containsString("Radiograph by a vet to count the pups"),
            containsString("Set up the whelping box"),
            containsString("Take her temperature morning and evening"),
            containsString("Counted from where ovulation may lie, not from a mating.")));
  }

  private void outcome(String season) {
    browser.unfold("#more");
    browser.follow("Whelping and litter");
    assertThat(browser.all("main [type=radio]:checked"), is(empty()));
    browser.choose("pregnant", "no");
    browser.type("whelpedOn", "2027-01-13");
    browser.type("litterSize", "6");
    browser.type("pupsBornAlive", "7");
    browser.press("Save");
    assertThat(browser.text("#fault-pregnant"), containsString("slip"));
    browser.choose("pregnant", "yes");
    browser.press("Save");
    assertThat(browser.text("#fault-pupsBornAlive"), containsString("more than were born"));
    look("outcome-refused");
    browser.type("pupsBornAlive", "6");
    browser.press("Save");
    assertThat(browser.path(), is(season));
    assertThat(browser.read("main"), containsString("She whelped on Wed 13 Jan 2027"));
    assertThat(browser.read("main"), containsString("She whelped, 6 pups, 6 born alive"));
    assertThat(browser.read("#red-flags"), containsString("after whelping"));
    look("whelped");
    browser.open("/");
    browser.follow("How well timing did");
    assertThat(browser.all("#whelpings li"), hasSize(1));
    assertThat(browser.text("#whelpings"), containsString("Juniper, Wed 13 Jan 2027: expected"));
    assertThat(browser.text("#together"), containsString("1 season: median error"));
    assertThat(browser.text("#together"), containsString("chance alone can make this"));
    look("timing");
  }
}
