package io.github.tiderule.api.page;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.everyItem;
import static org.hamcrest.Matchers.is;

import io.github.tiderule.api.service.Desk;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/** What every test of the pages does in the browser. */
final class Steps {

  private static final List<String> KINDS =
      List.of(
          "progesterone",
          "progesterone-band",
          "lh",
          "cytology",
          "sign",
          "breeding",
          "vaginoscopy",
          "ultrasound",
          "scan",
          "radiograph",
          "temperature");

  private Steps() {}

  /** Adds a female and a season of hers; the path of the season. */
  static String season(Browser browser, String name, String firstBlood) {
    browser.open("/females/new");
    browser.type("name", name);
    browser.press("Add her");
    browser.type("on", firstBlood);
    browser.choose("certainty", "seen");
    browser.type("zone", "Europe/Vienna");
    browser.press("Save the season");
    return browser.path();
  }

  /** Enters a progesterone value, from the page of a season or its form. */
  static void enter(Browser browser, String value, String unit, String at) {
    if (browser.all("main form [name=value]").isEmpty()) {
      browser.follow("Enter a result");
    }
    browser.type("value", value);
    browser.choose("unit", unit);
    browser.type("at", at);
    browser.press("Save and show the plan");
  }

  /**
   * Closes the desk. Whatever was done: nobody else was asked, the policy had nothing to forbid,
   * and nothing failed.
   */
  static void close(Desk desk, Browser browser) {
    String own = "127.0.0.1:" + desk.service.port();
    List<String> said = new ArrayList<>(browser.console());
    // the browser itself notes answers that refuse, and that a connection was taken away
    said.removeIf(one -> one.contains("Failed to load resource"));
    Set<String> asked = new TreeSet<>(browser.asked());
    desk.close();
    assertThat(said, is(empty()));
    assertThat(asked, everyItem(is(own)));
    assertThat(desk.faults, is(empty()));
  }

  /** Paths of all pages of a season that is shown, and of her it is of. */
  static List<String> pages(Browser browser, String season) {
    String female = browser.find(".crumbs a").getDomAttribute("href");
    List<String> pages =
        new ArrayList<>(
            List.of(
                "/",
                "/help",
                "/help/first-season",
                "/kennel",
                "/nothing-here",
                "/females/new",
                female,
                female + "/edit",
                female + "/seasons/new",
                season,
                season + "/edit",
                season + "/breeding",
                season + "/semen",
                season + "/outcome",
                "/timing",
                season + "/entries/p1",
                season + "/what-if"));
    KINDS.forEach(kind -> pages.add(season + "/enter/" + kind));
    return pages;
  }
}
