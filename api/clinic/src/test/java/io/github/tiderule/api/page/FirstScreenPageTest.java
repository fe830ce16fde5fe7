package io.github.tiderule.api.page;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.lessThanOrEqualTo;

import io.github.tiderule.api.service.Desk;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.openqa.selenium.WebElement;

/** How much a keeper reads on a phone before anything is opened, in ordinary invented seasons. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class FirstScreenPageTest {

  private static final int PHONE = 390;
  private static final int SCREEN = 844;
  private static final long SCREENS = 3;
  private static final long WORDS = 300;

  /** Fewer would mean that they are not seen by the test. */
  private static final long FEWEST = 100;

  private Browser browser;
  private Desk desk;

  @BeforeAll
  void start() {
    browser = Browser.start();
    desk = Desk.open();
    browser.at(desk.service.port());
  }

  @AfterAll
  void stop() {
    if (browser != null) {
      browser.close();
    }
    if (desk != null) {
      desk.close();
    }
  }

  /** Tokens with two letters in them, of everything that is seen, drawn in the picture too. */
  private long words() {
    Object count =
        browser.run(
            """
            const seen = [];
            const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
            while (walk.nextNode()) {
              const holder = walk.currentNode.parentElement;
              if (holder.checkVisibility() && !holder.closest('.unseen, .skip, title, desc')) {
                seen.push(walk.currentNode.data);
              }
            }
            return seen.join(' ').split(/\\s+/).filter(one => /[A-Za-z]{2}/.test(one)).length;
            """);
    return ((Number) count).longValue();
  }

  private long height() {
    return ((Number) browser.run("return document.documentElement.scrollHeight")).longValue();
  }

  /** Whether a part stands above another. */
  private boolean above(String first, String second) {
    WebElement one = browser.find(first);
    return one.getLocation().getY() + one.getSize().getHeight()
        <= browser.find(second).getLocation().getY();
  }

  private void holds(String name) {
    browser.width(PHONE);
    browser.picture("first-" + name + "-390");
    assertThat(name + ", words", words(), lessThanOrEqualTo(WORDS));
    assertThat(name + ", words", words(), greaterThan(FEWEST));
    assertThat(name + ", height", height(), lessThanOrEqualTo(SCREENS * SCREEN));
    assertThat(name, above("#now", "#due"), is(true));
    assertThat(name, above("#due", "#picture"), is(true));
    assertThat(name, above("#picture", "#known"), is(true));
    assertThat(name, above("#known", ".folds"), is(true));
    assertThat(name, browser.faults(), is(empty()));
    browser.dark(true);
    assertThat(name, browser.faint(), is(empty()));
    browser.picture("first-" + name + "-390-dark");
    browser.dark(false);
  }

  @Test
  void anOrdinarySeasonIsThreeScreensOfThreeHundredWords() {
    browser.open("/");
    browser.press("Make an invented female");
    holds("rising");
    String season = browser.path();
    browser.open("/females/new");
    String other = Steps.season(browser, "Juniper (invented)", "2027-01-03");
    holds("begun");
    for (List<String> value :
        List.of(
            List.of("0.8", "2027-01-08T08:00"),
            List.of("2.1", "2027-01-11T08:00"),
            List.of("5.9", "2027-01-13T08:00"))) {
      browser.open(other);
      Steps.enter(browser, value.get(0), "ng/mL", value.get(1));
    }
    holds("risen");
    browser.open(season);
    assertThat(browser.find(".dock").getCssValue("position"), is("fixed"));
    // one tap on a day of the picture opens what is said of it
    WebElement day = browser.find("#picture .narrow a");
    String place = String.valueOf(day.getDomAttribute("href"));
    browser.run(
        "document.querySelector('#picture .narrow a')"
            + ".dispatchEvent(new MouseEvent('click', {bubbles: true, cancelable: true}))");
    browser.await(one -> one.find(place).isDisplayed() ? one : null);
  }
}
