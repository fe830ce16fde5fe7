package io.github.tiderule.api.page;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.not;

import io.github.tiderule.api.access.People;
import io.github.tiderule.api.access.Role;
import io.github.tiderule.api.record.GivenAdvice;
import io.github.tiderule.api.service.Desk;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Advice is kept by itself, once for the same record and day, by who may write. */
class KeepingTest {

  private final Desk desk = Desk.withUsers();
  private final Visitor anna = new Visitor(desk, desk.token("anna", Role.KEEPER));
  private String juniper = "";
  private String season = "";

  @BeforeEach
  void season() {
    juniper = anna.female("Juniper");
    season = anna.season(juniper);
  }

  @AfterEach
  void close() {
    desk.close();
    assertThat(desk.faults, hasSize(0));
  }

  private List<GivenAdvice> given() {
    return desk.store.read(ledger -> ledger.advices().latest(season, 10));
  }

  private String look(Visitor visitor) {
    String page = visitor.get("/seasons/" + season).body();
    assertThat(page, not(containsString("on file")));
    return page;
  }

  @Test
  void whatIsEnteredOrLookedAtOnANewDayIsKept() {
    assertThat(given(), hasSize(0));
    look(anna);
    assertThat(given(), hasSize(1));
    look(anna);
    assertThat(given(), hasSize(1));
    anna.enter(season, 12, "2.6");
    assertThat(given(), hasSize(2));
    look(anna);
    assertThat(given(), hasSize(2));
    desk.clock.move(Duration.ofDays(1));
    String page = look(anna);
    assertThat(given(), hasSize(3));
    assertThat("compared with the one before it", page, containsString("id=\"changes\""));
    assertThat(given().get(0).asOf(), is(desk.clock.instant()));
  }

  @Test
  void whoMayOnlyLookKeepsNothingAndAVetFindsAPlanToSign() {
    anna.post("/females/" + juniper + "/sharing", "was=1&clinic=yes");
    Visitor rita = new Visitor(desk, desk.token("rita", Role.READER));
    look(rita);
    assertThat(
        rita.get("/seasons/" + season + "/reasoning").body(),
        containsString("so there is nothing to review"));
    assertThat(given(), hasSize(0));
    Visitor vera = new Visitor(desk, desk.token("vera", Role.VET));
    String reasoning = Visitor.location(vera.get("/seasons/" + season + "/reasoning"));
    assertThat(reasoning, is("/advice/" + given().get(0).key()));
    assertThat(vera.get(reasoning).body(), containsString("Sign this plan"));
    String person = desk.store.read(ledger -> People.of(ledger).named("vera").orElseThrow()).key();
    assertThat(given().get(0).person(), is(person));
    desk.clock.move(Duration.ofDays(1));
    assertThat(
        "a day later there is a newer one to be had",
        Visitor.location(vera.get("/seasons/" + season + "/reasoning")),
        is(not(reasoning)));
    assertThat(given(), hasSize(2));
  }
}
