package io.github.tiderule.api.service;

import io.github.tiderule.api.record.Change;
import io.github.tiderule.api.record.Cycle;
import io.github.tiderule.api.record.Entry;
import io.github.tiderule.api.record.Female;
import io.github.tiderule.api.record.GivenAdvice;
import io.github.tiderule.api.record.Ledger;
import io.github.tiderule.api.record.Review;
import io.github.tiderule.api.record.SeasonText;
import io.github.tiderule.api.record.table.Keys;
import io.github.tiderule.api.record.table.Page;
import io.github.tiderule.api.service.http.Body;
import io.github.tiderule.api.service.http.Hand;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.format.cycle.CycleText;
import io.github.tiderule.format.node.Node;
import io.github.tiderule.format.node.NodeText;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * What one person changes in the record in one piece of work: checked for whether they may, and
 * whether it leaves a good cycle file, and noted in the audit log. Every door comes through here.
 */
public final class Recording {

  private final Hand hand;
  private final Ledger ledger;

  private Recording(Hand hand, Ledger ledger) {
    this.hand = hand;
    this.ledger = ledger;
  }

  /** For one piece of work. */
  public static Recording of(Hand hand, Ledger ledger) {
    return new Recording(hand, ledger);
  }

  /**
   * Adds a female of the person's own.
   *
   * @param said the {@code female} object of a cycle file; without {@code id}, one is made
   */
  public Female addFemale(Node.Members said) {
    String name = name(said, Keys.next(hand.now()));
    String document = female(said, name);
    Female female = ledger.females().add(hand.person().key(), name, document, hand.now());
    hand.note(ledger, "female-added", female.key(), female.key());
    return female;
  }

  /** Changes what is known of a female. */
  public Female changeFemale(Female was, Node.Members said) {
    Known.mustDecide(hand.person(), was);
    String name = name(said, was.handle());
    Female female =
        ledger.females().change(was, name, female(said, name), hand.person().key(), hand.now());
    checkSeasons(female);
    hand.note(ledger, "female-changed", female.key(), female.key());
    return female;
  }

  /** What her owner calls her in cycle files; what cannot be one is refused by their reader. */
  private static String name(Node.Members said, String otherwise) {
    return said.byKey().get("id") instanceof Node.Text text ? text.value() : otherwise;
  }

  private String female(Node.Members said, String name) {
    Map<String, Node> fields = new LinkedHashMap<>();
    fields.put("id", new Node.Text(name));
    fields.putAll(said.byKey());
    String document = NodeText.of(new Node.Members(fields));
    CycleCheck.read(CycleText.ofFemale(hand.now(), document), "/female", "");
    return document;
  }

  /** What is newly said of her must not make a season of hers a bad cycle file. */
  private void checkSeasons(Female female) {
    Page.Wanted wanted = Page.Wanted.FIRST;
    while (true) {
      Page<Cycle> page = ledger.cycles().of(female.key(), wanted);
      for (Cycle cycle : page.items()) {
        CycleCheck.read(
            SeasonText.of(cycle.seenAt(), female, cycle, ledger.entries().current(cycle.key())),
            "/female",
            "");
      }
      if (page.next() == null) {
        return;
      }
      wanted = new Page.Wanted(page.next(), wanted.limit());
    }
  }

  /** Shares a female with the clinic, or ends that. */
  public Female share(Female was, boolean shared) {
    Known.mustDecide(hand.person(), was);
    Female female = ledger.females().share(was, shared, hand.person().key(), hand.now());
    hand.note(
        ledger, shared ? "female-shared" : "female-sharing-ended", female.key(), female.key());
    return female;
  }

  /**
   * Adds a season of a female.
   *
   * @param said what a cycle file says beside the female and the observations
   * @param asOf the moment it is looked at; absent for one that goes on
   */
  public Cycle addSeason(Female female, Node.Members said, @Nullable Instant asOf) {
    Known.mustEnter(hand.person(), female);
    String document = NodeText.of(said);
    check(asOf == null ? hand.now() : asOf, female, document, List.of(), "", "");
    Cycle cycle =
        ledger.cycles().add(female.key(), document, asOf, hand.person().key(), hand.now());
    hand.note(ledger, "cycle-added", cycle.key(), female.key());
    return cycle;
  }

  /** Changes what is known of a season beside its observations. */
  public Cycle changeSeason(Known.Season was, Node.Members said, @Nullable Instant asOf) {
    Known.mustEnter(hand.person(), was.female());
    String document = NodeText.of(said);
    List<Entry> current = ledger.entries().current(was.cycle().key());
    check(
        asOf == null ? hand.now() : asOf,
        was.female(),
        document,
        SeasonText.documents(current),
        "",
        "");
    Cycle cycle =
        ledger.cycles().change(was.cycle(), document, asOf, hand.person().key(), hand.now());
    hand.note(ledger, "cycle-changed", cycle.key(), was.female().key());
    return cycle;
  }

  /** Adds an observation to a season. */
  public Entry add(Known.Season season, Node.Members observation) {
    Known.mustEnter(hand.person(), season.female());
    String document = NodeText.of(observation);
    Instant moment = season.cycle().moment(hand.now());
    checkFurther(season, moment, document);
    String id = ((Node.Text) Body.there(observation.byKey().get("id"))).value();
    Entry entry =
        ledger
            .entries()
            .add(season.cycle().key(), id, document, hand.person().key(), moment, hand.now());
    return entered(season, entry);
  }

  /**
   * Corrects an observation, or takes it back.
   *
   * @param was its last entry when the change was thought of
   * @param observation what it reads now; absent when it was never so
   * @param sent where the observation stands in what was sent, for problems with it
   */
  public Entry replace(
      Known.Season season,
      Entry was,
      Node.@Nullable Members observation,
      String reason,
      String sent) {
    Known.mustEnter(hand.person(), season.female());
    String document = observation == null ? null : NodeText.of(observation);
    Instant moment = season.cycle().moment(hand.now());
    List<String> all = new ArrayList<>();
    int place = -1;
    for (Entry entry : ledger.entries().current(season.cycle().key())) {
      if (entry.number() != was.number()) {
        all.add(Body.there(entry.document()));
      } else if (document != null) {
        place = all.size();
        all.add(document);
      }
    }
    if (was.change() != Change.RETRACTED) {
      check(season, moment, all, place, sent);
    }
    return entered(
        season,
        ledger.entries().replace(was, document, reason, hand.person().key(), moment, hand.now()));
  }

  /**
   * Has an observation that was taken back count again.
   *
   * @param was its last entry when the change was thought of
   * @param observation what it reads
   */
  public Entry restore(Known.Season season, Entry was, Node.Members observation, String reason) {
    Known.mustEnter(hand.person(), season.female());
    String document = NodeText.of(observation);
    Instant moment = season.cycle().moment(hand.now());
    checkFurther(season, moment, document);
    return entered(
        season,
        ledger.entries().restore(was, document, reason, hand.person().key(), moment, hand.now()));
  }

  /** Checks the season with one more observation. */
  private void checkFurther(Known.Season season, Instant moment, String document) {
    List<String> all =
        new ArrayList<>(SeasonText.documents(ledger.entries().current(season.cycle().key())));
    all.add(document);
    check(season, moment, all, all.size() - 1, "");
  }

  private Entry entered(Known.Season season, Entry entry) {
    hand.note(
        ledger,
        "observation-" + entry.change().word(),
        season.cycle().key() + "/" + entry.number(),
        season.female().key());
    return entry;
  }

  private static void check(
      Known.Season season, Instant moment, List<String> observations, int place, String sent) {
    check(
        moment,
        season.female(),
        season.cycle().document(),
        observations,
        "/observations/" + place,
        sent);
  }

  private static void check(
      Instant moment,
      Female female,
      String season,
      List<String> observations,
      String part,
      String sent) {
    CycleCheck.read(CycleText.of(moment, female.document(), season, observations), part, sent);
  }

  /**
   * Keeps advice that was worked out on a season.
   *
   * @param cycleFile the cycle file it answers
   * @param answer the advice, as it is written for programs
   */
  public GivenAdvice keep(Known.Season season, String cycleFile, Advice advice, String answer) {
    Known.mustEnter(hand.person(), season.female());
    GivenAdvice given =
        new GivenAdvice(
            Keys.next(hand.now()),
            season.cycle().key(),
            hand.now(),
            advice.asOf().toInstant(),
            hand.person().key(),
            advice.stamp().engine(),
            advice.stamp().rules(),
            cycleFile,
            answer);
    ledger.advices().add(given);
    hand.note(ledger, "advice-given", given.key(), season.female().key());
    return given;
  }

  /**
   * Signs what a vet thinks of advice.
   *
   * @param typedName the vet's name, in a record without users
   */
  public Review review(
      Known.Given given,
      Review.Verdict verdict,
      @Nullable String note,
      @Nullable String typedName) {
    Review review =
        new Review(
            Keys.next(hand.now()),
            given.advice().key(),
            hand.person().key(),
            hand.now(),
            verdict,
            note,
            typedName);
    ledger.advices().add(review);
    hand.note(ledger, "advice-reviewed", review.key(), given.female().key());
    return review;
  }
}
