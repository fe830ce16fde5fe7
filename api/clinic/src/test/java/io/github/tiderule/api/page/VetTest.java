package io.github.tiderule.api.page;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.everyItem;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.lessThan;
import static org.hamcrest.Matchers.lessThanOrEqualTo;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.oneOf;
import static org.hamcrest.Matchers.startsWith;

import io.github.tiderule.api.access.Role;
import io.github.tiderule.api.record.GivenAdvice;
import io.github.tiderule.api.service.Desk;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.support.ui.Select;

/** A vet with a browser, looking at a season a keeper shares with the clinic. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class VetTest {

  private static final String WHY = "Thaw on Sunday: her last season ran a day late. <b>Vera</b>";

  private Browser browser;
  private Desk desk;
  private String season = "";

  /** Anna's Juniper: two values, shared with the clinic. */
  @BeforeAll
  void start() {
    browser = Browser.start();
    desk = Desk.withUsers();
    desk.add("anna", Role.KEEPER);
    desk.add("vera", Role.VET);
    desk.add("rita", Role.READER);
    season = shared("Juniper");
  }

  /** Whatever was done: nobody else was asked, nothing was forbidden and nothing failed. */
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

  @BeforeEach
  void wide() {
    browser.width(1280);
  }

  private String shared(String name) {
    signIn("anna");
    String made = Steps.season(browser, name, "2027-01-03");
    enter("1.1", "ng/mL", "2027-01-08T08:00");
    enter("6.2", "ng/mL", "2027-01-12T08:00");
    browser.follow(name);
    browser.press("Share her with the clinic");
    return made;
  }

  private void signIn(String name) {
    browser.at(desk.service.port());
    browser.asked();
    browser.open("/sign-in");
    browser.type("name", name);
    browser.type("password", Desk.PASSWORD);
    browser.press("Sign in");
  }

  private void enter(String value, String unit, String at) {
    Steps.enter(browser, value, unit, at);
  }

  private void select(String part, String value) {
    new Select(browser.find("#filter-" + part)).selectByValue(value);
    browser.press("Show this part");
  }

  private List<GivenAdvice> given(String season) {
    String cycle = season.substring(season.lastIndexOf('/') + 1);
    return desk.store.read(ledger -> ledger.advices().latest(cycle, 10));
  }

  private void openReasoning(String season) {
    browser.open(season);
    browser.unfold("#more");
    browser.follow("The reasoning behind the plan");
  }

  @Test
  void theArgumentGoesFromTheObservationsToTheDays() {
    signIn("vera");
    openReasoning(season);
    assertThat(browser.path(), is("/advice/" + given(season).get(0).key()));
    List<String> parts = browser.all("main h2").stream().map(WebElement::getText).toList();
    List<String> order =
        List.of(
            "Observations, and how each was read",
            "Reading: what each result is worth",
            "Findings: what the results say about her",
            "Timeline: when she ovulates",
            "Days: what speaks for and against each",
            "Next: what to test and when",
            "Care: cautions and positions of schools");
    assertThat(parts.stream().filter(order::contains).toList(), is(order));
    assertThat(browser.text("#observation-p2"), containsString("6.2 ng/mL = 19.7 nmol/L"));
    assertThat(browser.text("#observation-p2"), containsString("Median of ovulation "));
    assertThat(browser.text("#stage-findings"), containsString("First rise"));
    assertThat(browser.text("#stage-findings .cites"), containsString("read as: "));
    browser.find("#thumbs summary").click();
    assertThat(browser.text("#thumbs"), containsString("The first value above 5 ng/mL"));
    assertThat(browser.text("#thumbs"), containsString("6.2 ng/mL of Tue 12 Jan"));
    assertThat(browser.text("#thumbs"), containsString("Thu 14 Jan"));
    assertThat(
        browser.text("#stage-findings"),
        containsString(
            "between the progesterone of Fri 8 Jan 08:00 and the progesterone of Tue 12"));
    // folded away until it is asked for
    assertThat(browser.find("#silent ul").isDisplayed(), is(false));
    assertThat(browser.find("#stage-reading .step").isDisplayed(), is(false));
    assertThat(browser.find("#stage-findings .step").isDisplayed(), is(true));
    // but printed
    assertThat(browser.printed(), containsString("Missing: "));
    assertThat(browser.printed(), containsString("is taken as 6.2 ng/mL"));
    assertThat(browser.find("#silent ul").isDisplayed(), is(false));
    browser.find(".contents a[href='#silent']").click();
    browser.await(one -> one.find("#silent ul").isDisplayed() ? one : null);
    assertThat(browser.text("#silent"), containsString("Missing: "));
    assertThat(browser.all("#outcome a[href='" + season + "/summary.pdf']"), hasSize(1));
    assertThat(browser.all(".curve svg > title"), hasSize(2));
    // every link within the page leads somewhere
    List<String> lost =
        browser.all("main a[href*='#']").stream()
            .map(link -> link.getDomAttribute("href"))
            .filter(href -> href.startsWith("#"))
            .filter(href -> browser.all("[id='" + href.substring(1) + "']").isEmpty())
            .toList();
    assertThat(lost, is(empty()));
    assertThat(browser.faults(), is(empty()));
    browser.dark(true);
    assertThat(browser.faint(), is(empty()));
    browser.dark(false);
    browser.open(browser.path() + "?open=all");
    assertThat(browser.all("details:not([open]):not(.term, .curve details)"), is(empty()));
    assertThat(browser.text("#stage-findings"), containsString("level at least"));
    assertThat(browser.faults(), is(empty()));
    for (int pixels : new int[] {320, 360}) {
      browser.width(pixels);
      assertThat(browser.tooWide(), is(lessThanOrEqualTo(0L)));
    }
  }

  @Test
  void partsOfItAreFoundByObservationByRuleAndByDay() {
    signIn("vera");
    openReasoning(season);
    int all = browser.all("main .step[id]").size();
    select("observation", "p2");
    assertThat(browser.all("main .step[id]").size(), is(lessThan(all)));
    assertThat(browser.all("main .step[id]").size(), is(greaterThan(0)));
    for (WebElement step : browser.all("main .step[id]")) {
      List<String> from =
          step.findElements(By.cssSelector(".from a")).stream()
              .map(link -> link.getDomAttribute("href"))
              .toList();
      assertThat(step.getText(), from, hasItem("#observation-p2"));
    }
    assertThat(browser.all("#observation-p1"), is(empty()));
    assertThat(browser.faults(), is(empty()));
    browser.follow("Show everything");
    assertThat(browser.all("main .step[id]"), hasSize(all));
    select("rule", "RDG-050");
    assertThat(browser.all("main .step[id]"), hasSize(2));
    assertThat(browser.text("main"), containsString("It spoke; what it said is below."));
    browser.open(browser.path() + "?rule=FND-020");
    assertThat(browser.text("main"), containsString("It kept silent."));
    assertThat(browser.text("main"), containsString("not met: "));
    assertThat(browser.faults(), is(empty()));
    browser.open(browser.path() + "?day=2027-01-15");
    assertThat(browser.all(".argued-days > li"), hasSize(1));
    assertThat(browser.text("#day-2027-01-15"), containsString("in 100 eggs"));
    assertThat(browser.all("#stage-days .step[id]"), hasSize(greaterThan(0)));
    for (WebElement sentence : browser.all("#stage-days .step[id] p:not(.from)")) {
      assertThat(sentence.getText(), containsString("Fri 15 Jan"));
    }
    assertThat(browser.all("main details.fold:not([open])"), hasSize(1));
    browser.open(browser.path() + "?day=2027-01-12");
    assertThat(
        browser.text("#stage-reading"),
        containsString("The progesterone of Tue 12 Jan 08:00 is taken as 6.2 ng/mL"));
    assertThat(browser.text("#stage-findings"), containsString("First rise"));
    assertThat(browser.body(), not(containsString("Fri 8 Jan 08:00 is taken as")));
    for (String nothing : List.of("?rule=XXX-999", "?day=yesterday", "?observation=%3Cb%3E")) {
      browser.open(browser.path() + nothing);
      assertThat(browser.body(), containsString("Nothing in this reasoning is about that."));
    }
  }

  @Test
  void anOverrideIsKeptWithItsReasonAndTheKeeperSeesIt() {
    String season = shared("Hazel");
    String answer = given(season).get(0).answer();
    signIn("vera");
    openReasoning(season);
    String reasoning = browser.path();
    browser.choose("verdict", "disagreed");
    browser.press("Sign");
    assertThat(browser.text(".errors"), containsString("Say what to do instead and why"));
    assertThat(browser.focused().getDomAttribute("id"), is("errors"));
    assertThat(browser.find("[value=disagreed]").isSelected(), is(true));
    assertThat(browser.faults(), is(empty()));
    browser.find("#field-note").sendKeys(WHY);
    browser.press("Sign");
    assertThat(browser.path(), is(reasoning));
    assertThat(browser.text(".signed"), containsString("vera (vet) would do otherwise"));
    assertThat(browser.text(".signed"), containsString(WHY));
    assertThat(given(season).get(0).answer(), is(answer));

    signIn("anna");
    browser.open(season);
    String headline = browser.text("#now .headline");
    assertThat(browser.text(".signed"), containsString("vera (vet) would do otherwise"));
    assertThat(browser.text(".signed"), containsString(WHY));
    assertThat(browser.text(".signed"), not(containsString("earlier plan")));
    assertThat(answer, containsString(headline));
    assertThat(browser.faults(), is(empty()));
    enter("9.9", "ng/mL", "2027-01-13T08:00");
    assertThat(browser.text(".signed"), containsString("This is about an earlier plan"));
    browser.open(reasoning);
    assertThat(browser.body(), containsString("There is a newer plan of this season."));
    browser.follow("Go to the newest");
    assertThat(browser.path(), is("/advice/" + given(season).get(0).key()));
    assertThat(browser.body(), containsString("What was signed about other plans"));
  }

  @Test
  void whoeverUsesTheMachineEntersAVetsWordUnderItsName() {
    Desk own = Desk.open();
    try {
      browser.at(own.service.port());
      String season = Steps.season(browser, "Hazel", "2027-01-03");
      enter("1.1", "ng/mL", "2027-01-08T08:00");
      openReasoning(season);
      browser.choose("verdict", "disagreed");
      browser.press("Sign");
      assertThat(browser.text("#fault-vet"), containsString("Type the name of the vet"));
      assertThat(browser.find("#field-vet").getDomAttribute("aria-invalid"), is("true"));
      assertThat(browser.faults(), is(empty()));
      browser.type("vet", "  Ida   Holm ");
      browser.find("#field-note").sendKeys(WHY);
      browser.press("Sign");
      assertThat(browser.text(".signed"), containsString("Ida Holm (vet) would do otherwise"));
      assertThat(browser.text(".signed"), containsString("Entered on this machine"));
      browser.open(season);
      assertThat(browser.text(".signed"), containsString("Ida Holm (vet) would do otherwise"));
      assertThat(browser.text(".signed"), containsString("Entered on this machine"));
      assertThat(browser.text(".signed"), containsString(WHY));
      assertThat(own.faults, is(empty()));
      assertThat(
          browser.asked(),
          everyItem(
              is(oneOf("127.0.0.1:" + own.service.port(), "127.0.0.1:" + desk.service.port()))));
    } finally {
      browser.at(desk.service.port());
      own.close();
    }
  }

  @Test
  void onlyVetsSign() {
    String season = shared("Alder");
    String reasoning = "/advice/" + given(season).get(0).key();
    for (String name : List.of("anna", "rita")) {
      signIn(name);
      browser.open(reasoning);
      assertThat(browser.text("h1"), is("The reasoning for Alder"));
      assertThat(browser.all("#sign"), is(empty()));
    }
    signIn("anna");
    browser.open(season);
    browser.follow("Alder");
    browser.press("Stop sharing her");
    for (String name : List.of("vera", "rita")) {
      signIn(name);
      browser.open(reasoning);
      assertThat(browser.text("h1"), is("There is nothing here"));
    }
  }

  @Test
  void aRuleHasAnAddressThatStays() {
    browser.at(desk.service.port());
    browser.open("/rules");
    assertThat(browser.faults(), is(empty()));
    browser.open("/rules/FND-003");
    assertThat(browser.text("h1"), startsWith("FND-003: "));
    assertThat(browser.body(), containsString("findings.rise.floor"));
    assertThat(browser.body(), containsString("1.5 ng/mL"));
    assertThat(browser.body(), containsString("1 – 2.5"));
    assertThat(browser.body(), containsString("Kutzler"));
    assertThat(browser.faults(), is(empty()));
    browser.width(320);
    assertThat(browser.tooWide(), is(lessThanOrEqualTo(0L)));
    browser.open("/rules/EST-001");
    assertThat(browser.body(), containsString("the engine reckons it"));
    browser.open("/rules/FND-999");
    assertThat(browser.text("h1"), is("There is nothing here"));
  }
}
