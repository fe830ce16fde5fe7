package io.github.tiderule.api.page;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.lessThanOrEqualTo;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.startsWith;

import io.github.tiderule.api.access.Role;
import io.github.tiderule.api.service.Desk;
import java.util.Objects;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;

/** Addresses with a secret in a browser, on a phone and a screen. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class AddressTest {

  private Browser browser;
  private Desk desk;
  private String season = "";

  @BeforeAll
  void start() {
    browser = Browser.start();
    desk = Desk.withUsers();
    desk.add("anna", Role.KEEPER);
    browser.at(desk.service.port());
    browser.asked();
    browser.open("/sign-in");
    browser.type("name", "anna");
    browser.type("password", Desk.PASSWORD);
    browser.press("Sign in");
    season = Steps.season(browser, "Juniper", "2027-01-03");
    Steps.enter(browser, "2.6", "ng/mL", "2027-01-12T08:00");
  }

  @AfterAll
  void stop() {
    if (browser != null) {
      try {
        Steps.close(desk, browser);
      } finally {
        browser.close();
      }
    }
  }

  private void isFine(String name) {
    for (int width : new int[] {360, 1280}) {
      browser.width(width);
      assertThat(name, browser.tooWide(), is(lessThanOrEqualTo(0L)));
      assertThat(name, browser.faults(), is(empty()));
      browser.picture(name + "-" + width);
    }
  }

  private String address() {
    return Objects.requireNonNull(browser.find("#field-address").getDomProperty("value"));
  }

  @Test
  void anAddressForACalendarIsMadeAndRevoked() {
    browser.open(season);
    browser.unfold("#more");
    browser.follow("Her dates in your calendar");
    assertThat(browser.find("[name=female]").getText(), containsString("Juniper"));
    isFine("calendars");
    browser.press("Make an address");
    String address = address();
    assertThat(address, startsWith("http://127.0.0.1:"));
    assertThat(
        browser.find("a.main").getDomAttribute("href"),
        is(address.replaceFirst("^http:", "webcal:")));
    browser.button("Copy").click();
    assertThat(browser.run("return String(getSelection())"), is(address));
    assertThat(browser.all(".code svg[role=img]").isEmpty(), is(false));
    isFine("calendar-made");
    browser.follow("Back to the addresses");
    assertThat(browser.body(), containsString("Not used yet."));
    isFine("calendars-listed");
    browser.find("main form[action$='/revoke'] button").click();
    browser.await(one -> one.body().contains("Revoked."));
    assertThat(browser.all("main form[action$='/revoke']"), is(empty()));
  }

  @Test
  void aLinkIsMadeReadAndListed() {
    browser.open(season);
    browser.unfold("#share");
    browser.follow("Make a link");
    isFine("link-form");
    browser.press("Make a link");
    assertThat(browser.text("#errors"), containsString("Say whom the link is for."));
    browser.type("label", "Dr Vera");
    browser.press("Make a link");
    String address = address();
    isFine("link-made");
    browser.open(address.replaceFirst("http://[^/]+", ""));
    assertThat(browser.text("h1"), startsWith("Juniper"));
    assertThat(browser.all("header nav, main form"), is(empty()));
    assertThat(browser.text("main"), not(containsString("Enter a result")));
    browser.unfold("#reasons");
    isFine("shared");
    browser.open(season);
    browser.unfold("#share");
    assertThat(browser.text("#share"), containsString("Dr Vera"));
    assertThat(browser.text("#share"), containsString("Works until Fri 12 Feb 2027."));
    isFine("season-shared");
  }
}
