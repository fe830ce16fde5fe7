package io.github.tiderule.api.page;

import io.github.tiderule.api.access.People;
import io.github.tiderule.api.access.SeasonLinks;
import io.github.tiderule.api.page.form.Typed;
import io.github.tiderule.api.page.frame.Forms;
import io.github.tiderule.api.page.frame.Frame;
import io.github.tiderule.api.page.frame.Templates;
import io.github.tiderule.api.page.frame.Who;
import io.github.tiderule.api.page.plan.Documents;
import io.github.tiderule.api.page.plan.Handed;
import io.github.tiderule.api.page.plan.PlanView;
import io.github.tiderule.api.page.plan.Standing;
import io.github.tiderule.api.page.reasoning.Argued;
import io.github.tiderule.api.page.reasoning.Filter;
import io.github.tiderule.api.record.Cycle;
import io.github.tiderule.api.record.Female;
import io.github.tiderule.api.record.Ledger;
import io.github.tiderule.api.service.Known;
import io.github.tiderule.api.service.http.Answer;
import io.github.tiderule.api.service.http.Call;
import io.github.tiderule.api.service.http.Refusal;
import io.github.tiderule.api.service.http.Route;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.engine.validation.Legibility;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import org.jspecify.annotations.Nullable;

/** Links to one season for a vet or a stud owner who is no user, and what they see by them. */
public final class LinkPages {

  private static final String OF_SEASON = SeasonPages.ONE + "/links";
  private static final String ONE = "/shared/{secret}";
  private static final int UNFIT = 422;
  private static final int GONE = 410;
  private static final int LONGEST_LABEL = 120;

  /** How many days a link may last; the second unless another is chosen. */
  private static final List<Integer> DAYS = List.of(7, 30, 90);

  private static final int USUAL_DAYS = 30;

  private LinkPages() {}

  /**
   * A link that was made, as its season's page lists it.
   *
   * @param ends when it ends, or ended, in words
   * @param over whether it has ended
   * @param used when it was opened last, in words; absent when it never was
   */
  public record Line(String key, String label, String ends, boolean over, @Nullable String used) {}

  /** The form of a new link. */
  public record Form(Frame frame, Who who, Typed typed, List<Integer> days) {}

  /** The page that shows a link, once. */
  public record Made(Frame frame, Who who, String label, String ends, Handed handed) {}

  /**
   * A season as whoever has a link sees it.
   *
   * @param until when the link ends, in words
   */
  public record Shown(
      Frame frame, String name, String firstBlood, String until, PlanView plan, Argued argued) {}

  /** What is said of a link that has ended. */
  public record Over(Frame frame, String ended) {}

  /** What stands behind a link. */
  private record Behind(SeasonLinks.Link link, Standing.Held held) {}

  static List<Route> all() {
    return List.of(
        Route.page(Route.Method.GET, OF_SEASON, Route.Need.WRITER, LinkPages::blank),
        Route.page(Route.Method.POST, OF_SEASON, Route.Need.WRITER, LinkPages::make),
        Route.page(
            Route.Method.POST, OF_SEASON + "/{link}/revoke", Route.Need.WRITER, LinkPages::revoke),
        Route.page(Route.Method.GET, ONE, Route.Need.NOBODY, LinkPages::show));
  }

  /** The links to a season that were not revoked. */
  static List<Line> lines(Ledger ledger, Cycle cycle, Frame frame, Instant now) {
    ZoneId zone = Documents.zone(cycle);
    return SeasonLinks.of(ledger).of(cycle).stream()
        .map(
            link ->
                new Line(
                    link.key(),
                    link.label(),
                    day(link.expiresAt(), zone, frame),
                    link.isOver(now),
                    link.usedAt() == null ? null : day(link.usedAt(), zone, frame)))
        .toList();
  }

  private static String day(Instant at, ZoneId zone, Frame frame) {
    return frame.words().day(LocalDate.ofInstant(at, zone));
  }

  private static Known.Season decided(Call call, Ledger ledger) {
    Known known = new Known(call, ledger);
    Known.Season season = known.season();
    known.mustDecide(season.female());
    return season;
  }

  private static Answer blank(Call call) {
    Typed typed = Typed.nothing().fill("days", Integer.toString(USUAL_DAYS));
    return call.read(ledger -> form(call, ledger, 200, typed));
  }

  private static Answer form(Call call, Ledger ledger, int status, Typed typed) {
    Known.Season season = decided(call, ledger);
    Who who = Who.of(call, season.female(), season.cycle());
    return Templates.page(
        status,
        "link-form",
        new Form(Frame.of(call, "").titled("link.title", who.name()), who, typed, DAYS));
  }

  private static Answer make(Call call) {
    Typed typed = Typed.of(call.form());
    Texts texts = Texts.ofPages(Locale.ROOT);
    AtomicReference<@Nullable Made> made = new AtomicReference<>();
    Answer answer =
        Forms.save(
            call,
            typed,
            ledger -> {
              Known.Season season = decided(call, ledger);
              String label = label(typed, texts);
              if (label == null) {
                return null;
              }
              SeasonLinks.Made fresh =
                  SeasonLinks.of(ledger)
                      .make(
                          call.person(),
                          season.cycle(),
                          label,
                          Duration.ofDays(days(typed)),
                          call.now());
              call.note(ledger, "link-made", fresh.link().key(), season.female().key());
              made.set(made(call, season, fresh));
              return Answer.seeOther("/seasons/" + season.cycle().key() + "?done=address-shown");
            },
            ledger -> form(call, ledger, UNFIT, typed));
    // the secret is in no kept answer: a form sent twice makes one link, which is shown once
    Made shown = made.get();
    return shown == null ? answer : Templates.page("link-made", shown);
  }

  private static Made made(Call call, Known.Season season, SeasonLinks.Made fresh) {
    Who who = Who.of(call, season.female(), season.cycle());
    Frame frame = Frame.of(call, "").titled("link.made", who.name());
    return new Made(
        frame,
        who,
        fresh.link().label(),
        day(fresh.link().expiresAt(), who.zone(), frame),
        Handed.of(call.origin() + ONE.replace("{secret}", fresh.secret())));
  }

  private static @Nullable String label(Typed typed, Texts texts) {
    String label = typed.value("label").replaceAll("\\s+", " ");
    if (label.isEmpty()) {
      typed.refuse("label", texts.say("fault.link-label"));
    } else if (label.codePointCount(0, label.length()) > LONGEST_LABEL) {
      typed.refuse("label", texts.say("fault.note-long", LONGEST_LABEL));
    } else if (!label.codePoints().allMatch(Legibility::isSafe)) {
      typed.refuse("label", texts.say("problem.illegal-character"));
    }
    return typed.isGood() ? label : null;
  }

  private static int days(Typed typed) {
    return DAYS.stream()
        .filter(days -> typed.value("days").equals(Integer.toString(days)))
        .findFirst()
        .orElse(USUAL_DAYS);
  }

  private static Answer revoke(Call call) {
    Typed typed = Typed.of(call.form());
    return Forms.save(
        call,
        typed,
        ledger -> {
          Known.Season season = decided(call, ledger);
          SeasonLinks links = SeasonLinks.of(ledger);
          SeasonLinks.Link link =
              links.of(season.cycle()).stream()
                  .filter(one -> one.key().equals(call.part("link")))
                  .findFirst()
                  .orElseThrow(Refusal::notFound);
          links.revoke(link, call.now());
          call.note(ledger, "link-revoked", link.key(), season.female().key());
          return Answer.seeOther("/seasons/" + season.cycle().key() + "?done=address-revoked");
        },
        ledger -> Answer.seeOther("/seasons/" + decided(call, ledger).cycle().key()));
  }

  /** What whoever has a link sees. Nothing is kept by it but that it was opened. */
  private static Answer show(Call call) {
    call.mayNotBeListed();
    Behind behind = call.read(ledger -> behind(call, ledger));
    SeasonLinks.Link link = behind.link();
    Standing.Held held = behind.held();
    Frame frame = Frame.of(call, "");
    String ends = day(link.expiresAt(), Documents.zone(held.cycle()), frame);
    if (link.isOver(call.now())) {
      return Templates.page(GONE, "shared-over", new Over(frame.titled("shared.over"), ends));
    }
    Standing standing = Standing.of(held, call.now(), call.environment().reason());
    noteUse(call, link);
    String name = Documents.name(held.female(), frame.texts());
    Standing.Answered answered = standing.answered();
    return Templates.page(
        "shared",
        new Shown(
            frame.titled("shared.title", name),
            name,
            Documents.firstBlood(held.cycle(), frame.texts(), frame.words()),
            ends,
            PlanView.of(answered, standing.before(), frame.texts(), frame.words()),
            Argued.of(
                answered.cycle(),
                answered.reasoning(),
                call.environment().rules().get().sources(),
                Filter.of(part -> Optional.empty()),
                frame.texts(),
                frame.words())));
  }

  private static void noteUse(Call call, SeasonLinks.Link link) {
    // the season is read whether it can be noted or not
    call.changed(ledger -> SeasonLinks.of(ledger).used(link, call.now()));
  }

  private static Behind behind(Call call, Ledger ledger) {
    SeasonLinks.Link link =
        SeasonLinks.of(ledger).find(call.part("secret")).orElseThrow(Refusal::notFound);
    Cycle cycle = ledger.cycles().find(link.cycle()).orElseThrow(Refusal::notFound);
    Female female =
        ledger
            .females()
            .find(cycle.female())
            .filter(
                her ->
                    People.of(ledger)
                        .find(link.person())
                        .filter(person -> person.closedAt() == null && person.mayDecide(her))
                        .isPresent())
            .orElseThrow(Refusal::notFound);
    return new Behind(link, Standing.Held.of(ledger, female, cycle));
  }
}
