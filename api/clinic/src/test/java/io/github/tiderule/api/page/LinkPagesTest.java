package io.github.tiderule.api.page;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.not;

import io.github.tiderule.api.access.Role;
import io.github.tiderule.api.access.SeasonLinks;
import io.github.tiderule.api.record.table.Page;
import io.github.tiderule.api.service.Desk;
import java.net.http.HttpResponse;
import java.time.Duration;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A link shows one season to who is no user, until it ends or is revoked. */
class LinkPagesTest {

  private static final Pattern SHOWN =
      Pattern.compile("value=\"http://127\\.0\\.0\\.1:\\d+(/shared/([^/\"]+))\"");

  private final Desk desk = Desk.withUsers();
  private final Visitor anna = new Visitor(desk, desk.token("anna", Role.KEEPER));
  private final Visitor stranger = Visitor.stranger(desk);
  private String juniper = "";
  private String season = "";

  @BeforeEach
  void season() {
    juniper = anna.female("Juniper");
    season = anna.season(juniper);
    anna.enter(season, 12, "2.6");
    anna.enter(anna.season(anna.female("Bracken")), 12, "1.7");
  }

  @AfterEach
  void close() {
    desk.close();
    assertThat(desk.faults, hasSize(0));
  }

  private String links() {
    return "/seasons/" + season + "/links";
  }

  private String made(String form) {
    HttpResponse<String> page = anna.post(links(), form);
    assertThat(page.body(), page.statusCode(), is(200));
    Matcher shown = SHOWN.matcher(page.body());
    assertThat(page.body(), shown.find(), is(true));
    return shown.group(1);
  }

  private List<SeasonLinks.Link> all() {
    return desk.store.read(
        ledger -> SeasonLinks.of(ledger).of(ledger.cycles().find(season).orElseThrow()));
  }

  @Test
  void whoHasItSeesTheSeasonAndNothingElse() {
    String path = made("label=Dr+Vera");
    HttpResponse<String> got = stranger.get(path);
    assertThat(got.statusCode(), is(200));
    assertThat(got.body(), containsString("Juniper"));
    assertThat(got.body(), containsString("class=\"headline\""));
    assertThat(got.body(), containsString("2.6 ng/mL"));
    assertThat(got.body(), containsString("id=\"plan\""));
    assertThat(got.body(), containsString("id=\"reasons\""));
    assertThat(got.body(), containsString("/rules/FND-"));
    assertThat(got.body(), not(containsString("Bracken")));
    for (String hidden : List.of(season, juniper, "<form", "Dr Vera", "anna", "href=\"/\"")) {
      assertThat(got.body(), not(containsString(hidden)));
    }
    assertThat(got.headers().firstValue("X-Robots-Tag").orElse(""), is("noindex, nofollow"));
    assertThat(got.headers().firstValue("Referrer-Policy").orElse(""), is("no-referrer"));
    assertThat(got.headers().allValues("Referrer-Policy"), hasSize(1));
    assertThat(got.headers().firstValue("Cache-Control").orElse(""), is("no-store"));
    assertThat(got.body(), containsString("<meta name=\"robots\" content=\"noindex"));
  }

  @Test
  void lookingByALinkKeepsNothing() {
    String path = made("label=Dr+Vera");
    int before = given();
    desk.clock.move(Duration.ofDays(2));
    assertThat(stranger.get(path).statusCode(), is(200));
    assertThat(given(), is(before));
    assertThat(all().get(0).usedAt(), is(desk.clock.instant()));
  }

  private int given() {
    return desk.store.read(ledger -> ledger.advices().of(season, Page.Wanted.FIRST)).items().size();
  }

  @Test
  void itEndsAfterAMonthUnlessSaidOtherwiseAndSaysSo() {
    String month = made("label=Dr+Vera");
    String week = made("label=Stud&days=7");
    desk.clock.move(Duration.ofDays(7).minusSeconds(1));
    assertThat(stranger.get(week).statusCode(), is(200));
    desk.clock.move(Duration.ofSeconds(1));
    HttpResponse<String> over = stranger.get(week);
    assertThat(over.statusCode(), is(410));
    assertThat(over.body(), containsString("This link has ended"));
    assertThat(over.body(), containsString("until Wed 20 Jan 2027"));
    assertThat(over.body(), not(containsString("Juniper")));
    assertThat(over.headers().firstValue("X-Robots-Tag").orElse(""), is("noindex, nofollow"));
    assertThat(stranger.get(month).statusCode(), is(200));
    desk.clock.move(Duration.ofDays(23));
    assertThat(stranger.get(month).statusCode(), is(410));
  }

  @Test
  void herSeasonListsItAndRevokesIt() {
    String path = made("label=Dr+Vera");
    String page = anna.get("/seasons/" + season).body();
    assertThat(page, containsString("Dr Vera"));
    assertThat(page, containsString("Works until Fri 12 Feb 2027."));
    assertThat(page, containsString("It works 30 days unless"));
    String revoke = links() + "/" + all().get(0).key() + "/revoke";
    Visitor bertha = new Visitor(desk, desk.token("bertha", Role.KEEPER));
    assertThat(bertha.post(revoke, "").statusCode(), is(404));
    assertThat(bertha.post(links(), "label=x").statusCode(), is(404));
    assertThat(anna.post(revoke, "").statusCode(), is(303));
    HttpResponse<String> gone = stranger.get(path);
    assertThat(gone.statusCode(), is(404));
    assertThat(gone.body(), is(stranger.get("/shared/" + "x".repeat(43)).body()));
    assertThat(anna.get("/seasons/" + season).body(), not(containsString("Dr Vera")));
  }

  @Test
  void onlyHerKeeperMakesOneAndItIsShownOnce() {
    anna.post("/females/" + juniper + "/sharing", "was=1&clinic=yes");
    Visitor vera = new Visitor(desk, desk.token("vera", Role.VET));
    assertThat(vera.get("/seasons/" + season).body(), not(containsString("id=\"share\"")));
    assertThat(vera.get(links()).statusCode(), is(403));
    assertThat(vera.post(links(), "label=x").statusCode(), is(403));
    assertThat(anna.post(links(), "label=").statusCode(), is(422));
    assertThat(all(), hasSize(0));
    String form = "once=link-1&label=Stud&days=90";
    assertThat(anna.postAgain(links(), form).statusCode(), is(200));
    assertThat(anna.postAgain(links(), form).statusCode(), is(303));
    assertThat(all(), hasSize(1));
  }

  @Test
  void aVetWhoSeesNobodyIsToldWhyAndWhatToAskFor() {
    Visitor vera = new Visitor(desk, desk.token("vera", Role.VET));
    String empty = vera.get("/").body();
    assertThat(empty, containsString("No keeper has shared a female with the clinic yet"));
    assertThat(empty, containsString("Ask the keeper"));
    Visitor bertha = new Visitor(desk, desk.token("bertha", Role.KEEPER));
    assertThat(bertha.get("/").body(), not(containsString("Ask the keeper")));
  }
}
