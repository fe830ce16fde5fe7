package io.github.tiderule.api.page;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.lessThanOrEqualTo;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.startsWith;

import io.github.tiderule.api.access.Role;
import io.github.tiderule.api.record.Entry;
import io.github.tiderule.api.record.table.Page;
import io.github.tiderule.api.service.Desk;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/** A breeder with a browser at the running service. */
class BreederTest extends InBrowser {

  /** A female of that name with a season that began ten days ago. */
  private String season(String name) {
    return season(name, "2027-01-03");
  }

  private String season(String name, String firstBlood) {
    return Steps.season(browser, name, firstBlood);
  }

  private void enter(String value, String unit, String at) {
    Steps.enter(browser, value, unit, at);
  }

  private List<Entry> entries(String season) {
    String cycle = season.substring(season.lastIndexOf('/') + 1);
    return desk.store.read(ledger -> ledger.entries().all(cycle, Page.Wanted.FIRST)).items();
  }

  @Test
  void fromTheFirstResultToThePlan() {
    browser.open("/");
    assertThat(browser.body(), containsString("Nobody is here yet"));
    String season = season("Juniper");
    browser.follow("Enter a result");
    assertThat(browser.all("main [name=unit]:checked"), is(empty()));
    enter("1,1", "ng/mL", "2027-01-08T08:00");
    assertThat(browser.path(), is(season));
    assertThat(browser.read("#entries"), containsString("Progesterone 1.1 ng/mL"));
    assertThat(browser.text("#now .headline"), startsWith("Test "));
    assertThat(browser.all(".strip .day"), hasSize(greaterThan(3)));
    assertThat(browser.read(".strip"), containsString("in 100 eggs"));
    assertThat(browser.read(".strip"), containsString("possible"));
    assertThat(browser.all(".curve svg > title"), hasSize(2));
    assertThat(browser.read("main"), containsString("How sure"));
    assertThat(browser.read("main"), containsString("Brucella"));
    enter("4.2", "ng/mL", "2027-01-12T08:00");
    assertThat(browser.text("#changes summary"), containsString("What changed since"));
    assertThat(browser.read("#changes"), containsString("progesterone 4.2 ng/mL"));
    browser.open("/");
    assertThat(browser.text(".females"), containsString("Juniper"));
    assertThat(browser.text(".females .said"), not(is("")));
  }

  @Test
  void theSheetsArePrintedFromHerPage() throws IOException, InterruptedException {
    season("Sorrel");
    enter("1.1", "ng/mL", "2027-01-08T08:00");
    for (String path : List.of("/plan.pdf", "/summary.pdf", "/plan.pdf?paper=letter")) {
      String address = browser.find("a[href$='" + path + "']").getDomProperty("href");
      HttpResponse<byte[]> got =
          HttpClient.newHttpClient()
              .send(
                  HttpRequest.newBuilder(URI.create(address)).build(),
                  HttpResponse.BodyHandlers.ofByteArray());
      assertThat(
          got.headers().firstValue("Content-Type").orElse(""), startsWith("application/pdf"));
      try (PDDocument document = Loader.loadPDF(got.body())) {
        assertThat(document.getNumberOfPages(), is(lessThanOrEqualTo(3)));
        assertThat(new PDFTextStripper().getText(document), containsString("Sorrel"));
        float width = document.getPage(0).getMediaBox().getWidth();
        assertThat(width > 600, is(path.endsWith("letter")));
      }
    }
  }

  @Test
  void theSheetForTheDayIsLinkedWhereThereIsOne() throws IOException, InterruptedException {
    String season = season("Sorrel");
    enter("1.1", "ng/mL", "2027-01-08T08:00");
    assertThat(browser.all("a[href*='/day.pdf']"), is(empty()));
    URI address = URI.create(browser.find("a[href$='/plan.pdf']").getDomProperty("href"));
    HttpResponse<String> none =
        HttpClient.newHttpClient()
            .send(
                HttpRequest.newBuilder(address.resolve(season + "/day.pdf")).build(),
                HttpResponse.BodyHandlers.ofString());
    assertThat(none.statusCode(), is(404));
  }

  @Test
  void methodAndLaboratoryAreRememberedAndTheUnitIsOnlyShown() {
    season("Juniper");
    browser.follow("Enter a result");
    new org.openqa.selenium.support.ui.Select(browser.find("[name=method]")).selectByValue("eclia");
    browser.type("laboratory", "north");
    enter("3.5", "nmol/L", "2027-01-08T08:00");
    browser.follow("Enter a result");
    assertThat(browser.find("[name=method]").getDomProperty("value"), is("eclia"));
    assertThat(browser.find("[name=laboratory]").getDomProperty("value"), is("north"));
    assertThat(browser.all("main [name=unit]:checked"), is(empty()));
    assertThat(browser.text("#field-unit"), containsString("Last time nmol/L"));
  }

  @Test
  void aValueWithoutUnitIsAskedAboutBesideItWithBothReadings() {
    String season = season("Juniper");
    enter("8.4", "not-stated", "2027-01-12T08:00");
    assertThat(browser.text("#asked-p1"), containsString("progesterone 8.4"));
    browser.picture("question-1280");
    assertThat(browser.button("It is ng/mL").isDisplayed(), is(true));
    assertThat(browser.faults(), is(empty()));
    browser.follow("Correct the entry instead");
    assertThat(browser.text("#field-unit"), containsString("In which unit is the progesterone"));
    assertThat(browser.text("#field-unit"), containsString("ng/mL: would be 8.4"));
    assertThat(browser.text("#field-unit"), containsString("nmol/L: would be 2.6"));
    browser.open(season);
    browser.press("It is nmol/L");
    assertThat(browser.all(".question"), is(empty()));
    assertThat(browser.read("#entries"), containsString("Progesterone 8.4 nmol/L"));
    assertThat(entries(season).get(1).reason(), containsString("nmol/L"));
    assertThat(entries(season).get(1).replaces(), is(1));
  }

  @Test
  void anEntryIsCorrectedWithItsReasonAndBothAreKept() {
    String season = season("Juniper");
    enter("42", "ng/mL", "2027-01-12T08:00");
    browser.unfold("#entries");
    browser.follow("Correct or take back");
    browser.type("value", "4.2");
    browser.press("Correct it");
    assertThat(browser.text(".errors"), containsString("Say why"));
    assertThat(browser.focused().getDomAttribute("id"), is("errors"));
    assertThat(browser.find("[name=value]").getDomProperty("value"), is("4.2"));
    browser.type("reason", "typing slip");
    browser.press("Correct it");
    assertThat(browser.read("#entries"), containsString("Progesterone 4.2 ng/mL"));
    assertThat(entries(season).get(1).reason(), is("typing slip"));
    browser.unfold("#entries");
    browser.follow("Correct or take back");
    assertThat(browser.text("main"), containsString("Progesterone 42 ng/mL"));
    assertThat(browser.text("main"), containsString("Why: typing slip"));
    browser.open(season + "?entry=p1");
    browser.press("Undo the correction");
    assertThat(browser.read("#entries"), containsString("Progesterone 42 ng/mL"));
    assertThat(entries(season), hasSize(3));
  }

  @Test
  void whatWasJustEnteredIsUndoneByOneButton() {
    String season = season("Juniper");
    browser.follow("Enter a result");
    browser.follow("LH test");
    browser.choose("result", "positive");
    browser.type("at", "2027-01-12T08:00");
    browser.press("Save and show the plan");
    assertThat(browser.read("#entries"), containsString("LH test, positive"));
    browser.press("Undo: take it back");
    assertThat(browser.read("#entries"), containsString("Nothing yet"));
    assertThat(entries(season), hasSize(2));
    browser.press("Undo: use it again");
    assertThat(browser.read("#entries"), containsString("LH test, positive"));
    assertThat(entries(season), hasSize(3));
    browser.open(season + "/entries/l1");
    browser.press("Typing slip");
    assertThat(browser.read("#entries"), containsString("Nothing yet"));
    browser.open(season + "/entries/l1");
    assertThat(browser.text("main"), containsString("Undone right after it was entered"));
    assertThat(browser.text("main"), containsString("Enter it anew"));
  }

  @Test
  void everyOtherKindIsEntered() {
    String season = season("Juniper");
    List<List<String>> kinds =
        List.of(
            List.of("cytology", "neutrophils", "none", "Smear, no neutrophils"),
            List.of("sign", "sign", "stands", "Stands for the male"),
            List.of("vaginoscopy", "folds", "angular", "Vaginoscopy, angular"),
            List.of("ultrasound", "finding", "follicles", "Ultrasound, follicles"),
            List.of("breeding", "semen", "natural", "Breeding done, natural mating"));
    for (List<String> kind : kinds) {
      browser.open(season + "/enter/" + kind.get(0));
      browser.choose(kind.get(1), kind.get(2));
      if (kind.get(0).equals("sign")) {
        browser.choose("present", "yes");
      }
      if (kind.get(0).equals("breeding")) {
        browser.choose("route", "natural");
      }
      browser.type("at", "2027-01-12T09:00");
      browser.press("Save and show the plan");
      assertThat(browser.read("#entries"), containsString(kind.get(3)));
    }
    browser.open(season + "/enter/progesterone-band");
    browser.type("low", "2,5");
    browser.type("high", "5");
    browser.choose("unit", "ng/mL");
    browser.type("at", "2027-01-12T09:00");
    browser.press("Save and show the plan");
    assertThat(browser.read("#entries"), containsString("Kit band 2.5–5 ng/mL"));
  }

  @Test
  void aNumberThatReadsTwoWaysIsAskedAbout() {
    season("Juniper");
    enter("1,234", "ng/mL", "2027-01-12T08:00");
    assertThat(browser.text(".errors"), containsString("two ways"));
    browser.press("1.234");
    assertThat(browser.read("#entries"), containsString("Progesterone 1.234 ng/mL"));
  }

  @Test
  void aPretendValueShowsAPlanAndSavesNothing() {
    String season = season("Juniper");
    enter("2.1", "ng/mL", "2027-01-12T08:00");
    String before = browser.text("#now .headline");
    browser.unfold("#more");
    browser.follow("What if?");
    browser.type("value", "14");
    browser.choose("unit", "ng/mL");
    browser.type("at", "2027-01-14T08:00");
    browser.press("Show the pretend plan");
    browser.picture("what-if-1280");
    assertThat(browser.text(".pretend"), containsString("nothing here is saved"));
    assertThat(
        browser.text("main"), containsString("If this were measured: Progesterone 14 ng/mL"));
    assertThat(browser.text("#now .headline"), not(is(before)));
    assertThat(browser.faults(), is(empty()));
    assertThat(entries(season), hasSize(1));
    browser.open(season);
    assertThat(browser.text("#now .headline"), is(before));
  }

  @Test
  void whatIsTypedOutlivesALostConnectionAndIsSavedOnce() {
    String season = season("Juniper");
    String form = season + "/enter/progesterone";
    browser.open(form);
    browser.type("value", "5,4");
    browser.choose("unit", "ng/mL");
    browser.type("at", "2027-01-12T08:00");
    browser.connected(false);
    browser.button("Save and show the plan").click();
    browser.await(one -> one.text("main form").contains("No connection"));
    assertThat(entries(season), is(empty()));
    browser.connected(true);
    browser.open(form);
    browser.await(one -> one.text("main form").contains("It is put back"));
    assertThat(browser.find("[name=value]").getDomProperty("value"), is("5,4"));
    assertThat(browser.find("[name=unit][value='ng/mL']").isSelected(), is(true));
    String key =
        String.valueOf(browser.run("return document.querySelector('main [name=once]').value"));
    browser.press("Save and show the plan");
    assertThat(entries(season), hasSize(1));
    assertThat(browser.run("return Object.keys(localStorage).length"), is(0L));
    // the same form sent again, as by a browser that never saw the answer
    browser.open(form);
    browser.type("value", "5,4");
    browser.choose("unit", "ng/mL");
    browser.type("at", "2027-01-12T08:00");
    browser.run("document.querySelector('main [name=once]').value = '" + key + "'");
    browser.press("Save and show the plan");
    assertThat(entries(season), hasSize(1));
  }

  @Test
  void aStopReplacesTheTalkOfTiming() {
    String season = season("Juniper");
    for (String sign : List.of("foul-discharge", "unwell")) {
      browser.open(season + "/enter/sign");
      browser.choose("sign", sign);
      browser.choose("present", "yes");
      browser.type("at", "2027-01-12T08:00");
      browser.press("Save and show the plan");
    }
    browser.picture("stop-1280");
    assertThat(browser.text(".stop h2"), is("Stop: see a vet first"));
    assertThat(browser.text(".stop"), containsString("a vet must see her now"));
    assertThat(browser.all(".strip"), is(empty()));
    assertThat(browser.all(".curve"), is(empty()));
    assertThat(browser.faults(), is(empty()));
  }

  @Test
  void theKeyboardIsEnough() {
    String season = season("Juniper", "2026-12-27");
    browser.open(season);
    browser.find("body").sendKeys(Keys.TAB);
    assertThat(browser.focused().getText(), is("Skip to the content"));
    browser.focused().sendKeys(Keys.ENTER);
    browser.open(season + "/enter/progesterone");
    tabTo("value").sendKeys("3.9");
    tabTo("unit").sendKeys(Keys.SPACE);
    // a day that reads the same whether the browser puts the day or the month first
    tabTo("at").sendKeys("01012027" + Keys.TAB + "1111AM");
    WebElement button = browser.button("Save and show the plan");
    for (int i = 0; i < 20 && !browser.focused().equals(button); i++) {
      assertThat(
          "a ring is seen around " + browser.focused().getDomProperty("outerHTML"),
          String.valueOf(
              browser.run("return getComputedStyle(document.activeElement).outlineStyle")),
          is("solid"));
      browser.focused().sendKeys(Keys.TAB);
    }
    WebElement page = browser.find("html");
    browser.focused().sendKeys(Keys.ENTER);
    browser.await(one -> !one.find("html").equals(page) && !one.all("#entries li").isEmpty());
    assertThat(browser.read("#entries"), containsString("Progesterone 3.9 ng/mL"));
  }

  private WebElement tabTo(String name) {
    for (int i = 0; i < 60; i++) {
      if (name.equals(browser.focused().getDomAttribute("name"))) {
        return browser.focused();
      }
      browser.focused().sendKeys(Keys.TAB);
    }
    throw new AssertionError("no key leads to " + name);
  }

  /** Every page there is to look at. */
  @Test
  void howSheIsToBeBredIsSaidInAForm() {
    String season = season("Juniper");
    browser.unfold("#more");
    browser.follow("Semen, order and laboratory hours");
    browser.choose("semen", "chilled");
    browser.choose("route", "transcervical");
    browser.type("doses", "1");
    browser.type("cutOff", "14:00");
    browser.type("transitHours", "20");
    browser.choose("noDeliveryOn", "SUNDAY");
    browser.press("Save and show the plan");
    assertThat(browser.path(), is(season));
    browser.unfold("#more");
    browser.follow("Semen, order and laboratory hours");
    assertThat(browser.find("[name=semen][value=chilled]").isSelected(), is(true));
    assertThat(browser.find("[name=cutOff]").getDomProperty("value"), is("14:00"));
    assertThat(browser.find("[name=noDeliveryOn][value=SUNDAY]").isSelected(), is(true));
  }

  @Test
  void twoKeepersAreKeptApart() {
    desk.close();
    desk = Desk.withUsers();
    desk.add("anna", Role.KEEPER);
    desk.add("bertha", Role.KEEPER);
    browser.at(desk.service.port());
    browser.asked();
    signIn("anna");
    String season = season("Secret of anna");
    enter("2.1", "ng/mL", "2027-01-12T08:00");
    List<String> hers = Steps.pages(browser, season);
    assertThat(browser.text(".who"), containsString("anna"));
    browser.find(".who button").click();
    browser.await(one -> one.path().equals("/sign-in"));
    browser.open(season);
    assertThat(browser.path(), is("/sign-in"));
    assertThat(browser.faults(), is(empty()));
    browser.type("name", "bertha");
    browser.type("password", "wrong, all of it");
    browser.press("Sign in");
    browser.picture("sign-in-1280");
    assertThat(browser.text(".errors"), containsString("Name or password is wrong"));
    browser.type("password", Desk.PASSWORD);
    browser.press("Sign in");
    assertThat("back to what was wanted, which is not hers", browser.path(), is(season));
    for (String page : hers) {
      browser.open(page);
      assertThat(page, browser.body(), not(containsString("Secret of anna")));
      if (page.startsWith(season)) {
        assertThat(page, browser.body(), containsString("There is nothing here"));
      }
    }
    browser.open("/");
    assertThat(List.of(browser.body()), hasItem(containsString("Nobody is here yet")));
  }

  private void signIn(String name) {
    browser.open("/");
    browser.type("name", name);
    browser.type("password", Desk.PASSWORD);
    browser.press("Sign in");
  }
}
