package io.github.tiderule.api.page;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.not;

import io.github.tiderule.api.record.Entry;
import io.github.tiderule.api.record.table.Page;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Entering on a phone: as few taps as can be, and nothing guessed. */
class EntryTest extends InBrowser {

  private static final int PHONE = 390;

  private String season = "";

  @BeforeEach
  void onAPhone() {
    browser.width(PHONE);
    season = Steps.season(browser, "Juniper (invented)", "2027-01-03");
  }

  private List<Entry> entries() {
    String cycle = season.substring(season.lastIndexOf('/') + 1);
    return desk.store.read(ledger -> ledger.entries().all(cycle, Page.Wanted.FIRST)).items();
  }

  private void value(String written) {
    browser.open(season + "/enter/progesterone");
    browser.type("value", written);
    browser.type("at", "2027-01-12T08:00");
  }

  @Test
  void aValuePastedWithItsUnitIsUnderstood() {
    value("4.6 ng/ml");
    browser.press("Save and show the plan");
    assertThat(browser.path(), is(season));
    assertThat(browser.read("#entries"), containsString("Progesterone 4.6 ng/mL"));
    assertThat(entries().get(0).document(), containsString("\"asReported\":\"4.6 ng/ml\""));
    value("14,6 nmol / L");
    browser.press("Save and show the plan");
    assertThat(browser.read("#entries"), containsString("Progesterone 14.6 nmol/L"));
  }

  @Test
  void aUnitThatContradictsTheOnePastedIsAskedAbout() {
    value("4.6 ng/ml");
    browser.choose("unit", "nmol/L");
    browser.press("Save and show the plan");
    assertThat(browser.text("#fault-unit"), containsString("The value says ng/mL"));
    assertThat(entries(), is(empty()));
    browser.choose("unit", "ng/mL");
    browser.press("Save and show the plan");
    assertThat(browser.read("#entries"), containsString("Progesterone 4.6 ng/mL"));
  }

  @Test
  void belowAndAboveAreTapped() {
    value("0.4");
    assertThat(browser.find("[name=limit][value=equal]").isSelected(), is(true));
    browser.choose("limit", "below");
    browser.choose("unit", "ng/mL");
    browser.picture("enter-390");
    browser.press("Save and show the plan");
    assertThat(browser.read("#entries"), containsString("Progesterone <0.4 ng/mL"));
    browser.open(season + "/entries/p1");
    assertThat(browser.find("[name=limit][value=below]").isSelected(), is(true));
    assertThat(browser.find("[name=value]").getDomProperty("value"), is("0.4"));
    value(">20");
    browser.choose("limit", "below");
    browser.choose("unit", "ng/mL");
    browser.press("Save and show the plan");
    assertThat(browser.text("#fault-limit"), containsString("Choose the one printed"));
    assertThat(browser.faults(), is(empty()));
  }

  @Test
  void nowAndThisMorningAreOneTap() {
    browser.open(season + "/enter/progesterone");
    browser.button("This morning").click();
    assertThat(String.valueOf(browser.find("[name=at]").getDomProperty("value")), not(is("")));
    browser.button("Now").click();
    assertThat(String.valueOf(browser.find("[name=at]").getDomProperty("value")), not(is("")));
  }

  @Test
  void severalSignsAreEnteredInOneGo() {
    browser.open(season + "/enter/sign");
    browser.choose("sign", "stands");
    browser.choose("sign", "flags");
    browser.choose("sign", "vulva-softens");
    browser.choose("present", "yes");
    browser.type("at", "2027-01-12T08:00");
    browser.press("Save and show the plan");
    assertThat(entries(), hasSize(3));
    assertThat(browser.read("#entries"), containsString("Stands for the male"));
    assertThat(browser.read("#entries"), containsString("Vulva softens"));
    browser.open(season + "/enter/sign");
    browser.press("Save and show the plan");
    assertThat(browser.text(".errors"), containsString("Choose at least one sign."));
    assertThat(browser.text(".errors"), containsString("Say whether it was seen"));
  }

  @Test
  void aCorrectionAndTakingBackHaveReasonsOfOneTap() {
    value("46");
    browser.choose("unit", "ng/mL");
    browser.press("Save and show the plan");
    browser.open(season + "/entries/p1");
    browser.type("value", "4.6");
    browser.choose("why", "slip");
    browser.picture("correct-390");
    browser.press("Correct it");
    assertThat(entries().get(1).reason(), is("Typing slip"));
    browser.open(season + "/entries/p1");
    assertThat(browser.faults(), is(empty()));
    browser.press("It was another bitch");
    assertThat(entries().get(2).reason(), is("It was another bitch"));
    assertThat(browser.read("#entries"), containsString("Nothing yet"));
  }

  @Test
  void theFirstPageSaysWhatIsDueTodayAndTomorrowOverAllFemales() {
    value("2.1");
    browser.choose("unit", "ng/mL");
    browser.press("Save and show the plan");
    String other = Steps.season(browser, "Hazel (invented)", "2027-01-04");
    browser.open(other + "/enter/progesterone");
    browser.type("value", "1.8");
    browser.choose("unit", "ng/mL");
    browser.type("at", "2027-01-13T08:00");
    browser.press("Save and show the plan");
    browser.open("/");
    browser.picture("home-390");
    assertThat(browser.text("#due"), containsString("Juniper (invented): progesterone test"));
    assertThat(browser.text("#due"), containsString("Today"));
    assertThat(browser.faults(), is(empty()));
    browser.width(1280);
    browser.picture("home-1280");
  }
}
