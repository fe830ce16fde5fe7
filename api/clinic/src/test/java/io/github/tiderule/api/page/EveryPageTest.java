package io.github.tiderule.api.page;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.lessThanOrEqualTo;

import io.github.tiderule.format.Nightly;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * What holds for each page: nothing hinders anybody, light or dark, and a phone shows all of it.
 */
class EveryPageTest extends InBrowser {

  /** The narrowest, and by night a usual phone too. */
  private static final List<Integer> WIDTHS = Nightly.is() ? List.of(360, 320) : List.of(320);

  @Test
  void everyPageIsAccessibleAndFitsAPhone() {
    browser.open("/");
    assertThat(browser.faults(), is(empty()));
    browser.press("Make an invented female");
    assertThat(browser.text("main"), containsString("this female does not exist"));
    String season = browser.path();
    for (String page : Steps.pages(browser, season)) {
      browser.width(1280);
      browser.open(page);
      assertThat(page, browser.faults(), is(empty()));
      String name =
          page.replace(season, "season")
              .replaceAll("[0-9a-z]{26}", "one")
              .replaceAll("[^a-z0-9]+", "-");
      browser.picture(name + "-1280");
      browser.dark(true);
      assertThat(page + ", dark", browser.faint(), is(empty()));
      browser.picture(name + "-1280-dark");
      browser.dark(false);
      for (int pixels : WIDTHS) {
        browser.width(pixels);
        assertThat(page + " at " + pixels, browser.tooWide(), is(lessThanOrEqualTo(0L)));
        browser.picture(name + "-" + pixels);
      }
      browser.run("document.querySelectorAll('details').forEach(one => one.open = true)");
      assertThat(page + " unfolded", browser.tooWide(), is(lessThanOrEqualTo(0L)));
    }
    browser.open(season + "/enter/progesterone");
    browser.press("Save and show the plan");
    browser.picture("errors-320");
    assertThat(browser.all(".errors li"), hasSize(3));
    assertThat(browser.faults(), is(empty()));
    browser.run("document.querySelector('.errors a').click()");
    assertThat(browser.run("return location.hash"), is("#field-value"));
  }
}
