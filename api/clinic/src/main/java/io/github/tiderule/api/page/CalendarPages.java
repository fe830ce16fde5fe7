package io.github.tiderule.api.page;

import io.github.tiderule.api.access.Audit;
import io.github.tiderule.api.access.CalendarAddresses;
import io.github.tiderule.api.access.People;
import io.github.tiderule.api.access.Person;
import io.github.tiderule.api.access.Secrets;
import io.github.tiderule.api.calendar.CalendarFeed;
import io.github.tiderule.api.page.form.Typed;
import io.github.tiderule.api.page.frame.Forms;
import io.github.tiderule.api.page.frame.Frame;
import io.github.tiderule.api.page.frame.Templates;
import io.github.tiderule.api.page.plan.Documents;
import io.github.tiderule.api.page.plan.Handed;
import io.github.tiderule.api.page.plan.Seasons;
import io.github.tiderule.api.record.Cycle;
import io.github.tiderule.api.record.Female;
import io.github.tiderule.api.record.Ledger;
import io.github.tiderule.api.record.table.Page;
import io.github.tiderule.api.service.Known;
import io.github.tiderule.api.service.SeasonDates;
import io.github.tiderule.api.service.http.Answer;
import io.github.tiderule.api.service.http.Call;
import io.github.tiderule.api.service.http.Refusal;
import io.github.tiderule.api.service.http.Route;
import io.github.tiderule.api.words.Texts;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.concurrent.atomic.AtomicReference;
import org.jspecify.annotations.Nullable;

/** The addresses that calendar programs subscribe to, and what they get by them. */
public final class CalendarPages {

  private static final String PATH = "/calendars";
  private static final String FEED = "/calendar/{secret}/dates.ics";
  private static final String FEMALE = "female";

  /** What lies further back is no longer in a calendar that is asked for again and again. */
  private static final Duration SHOWN = Duration.ofDays(366);

  /** From first blood until pups of hers are a fortnight old, her days may move by themselves. */
  private static final Duration MOVES = Duration.ofDays(120);

  private CalendarPages() {}

  /**
   * The page.
   *
   * @param females whom an address can be made for
   * @param chosen key of the one it was come from; empty for none
   */
  public record Shown(Frame frame, List<Line> addresses, List<Choice> females, String chosen) {}

  /**
   * An address that works.
   *
   * @param used when a program asked it last, in words; absent when none did
   */
  public record Line(String key, String whose, String made, @Nullable String used) {}

  /** A female to choose. */
  public record Choice(String key, String name) {}

  /** The page that shows an address, once. */
  public record Made(Frame frame, String whose, Handed handed) {}

  /** What stands behind an address. */
  private record Behind(CalendarAddresses.Address address, Person person, List<Her> all) {}

  /** A female with the seasons that are shown, in the order they were added. */
  private record Her(Female female, List<Cycle> seasons) {}

  static List<Route> all() {
    return List.of(
        Route.page(Route.Method.GET, PATH, Route.Need.WRITER, CalendarPages::list),
        Route.page(Route.Method.POST, PATH, Route.Need.WRITER, CalendarPages::make),
        Route.page(
            Route.Method.POST,
            PATH + "/{address}/revoke",
            Route.Need.WRITER,
            CalendarPages::revoke),
        Route.page(Route.Method.GET, FEED, Route.Need.NOBODY, CalendarPages::feed));
  }

  private static Answer list(Call call) {
    Frame frame = Frame.of(call, Texts.ofPages(Locale.ROOT).say("calendar.title"));
    return call.read(
        ledger -> {
          List<Female> own = own(ledger, call.person());
          ZoneId zone = zone(ledger, own);
          List<Line> lines =
              CalendarAddresses.of(ledger).of(call.person()).stream()
                  .map(one -> line(ledger, one, zone, frame))
                  .toList();
          return Templates.page(
              "calendars",
              new Shown(
                  frame,
                  lines,
                  own.stream()
                      .map(her -> new Choice(her.key(), Documents.name(her, frame.texts())))
                      .toList(),
                  call.query(FEMALE).orElse("")));
        });
  }

  private static Line line(
      Ledger ledger, CalendarAddresses.Address address, ZoneId zone, Frame frame) {
    Instant used = address.usedAt();
    return new Line(
        address.key(),
        whose(
            address.female() == null ? null : ledger.females().find(address.female()).orElse(null),
            frame.texts()),
        day(address.createdAt(), zone, frame),
        used == null ? null : day(used, zone, frame));
  }

  private static String day(Instant at, ZoneId zone, Frame frame) {
    return frame.words().day(LocalDate.ofInstant(at, zone));
  }

  private static String whose(@Nullable Female female, Texts texts) {
    return female == null ? texts.say("calendar.all") : Documents.name(female, texts);
  }

  private static List<Female> own(Ledger ledger, Person person) {
    List<Female> all = new ArrayList<>();
    Page.Wanted wanted = Page.Wanted.FIRST;
    while (wanted != null) {
      Page<Female> page = ledger.females().seenBy(person.key(), false, wanted);
      all.addAll(page.items());
      wanted = page.next() == null ? null : new Page.Wanted(page.next(), wanted.limit());
    }
    return all;
  }

  /** Where they are, as far as the record says. */
  private static ZoneId zone(Ledger ledger, List<Female> females) {
    return females.stream()
        .map(female -> Seasons.of(ledger, female).last())
        .filter(Objects::nonNull)
        .findFirst()
        .map(Documents::zone)
        .orElse(ZoneOffset.UTC);
  }

  private static Answer make(Call call) {
    Typed typed = Typed.of(call.form());
    Frame frame = Frame.of(call, Texts.ofPages(Locale.ROOT).say("calendar.made"));
    AtomicReference<@Nullable Made> made = new AtomicReference<>();
    Answer answer =
        Forms.save(
            call,
            typed,
            ledger -> {
              Female female = chosen(call, ledger, typed.value(FEMALE));
              CalendarAddresses.Made fresh =
                  CalendarAddresses.of(ledger).make(call.person(), female, call.now());
              note(call, ledger, "calendar-address-made", fresh.address());
              String path = FEED.replace("{secret}", fresh.secret());
              made.set(
                  new Made(frame, whose(female, frame.texts()), Handed.of(call.origin() + path)));
              return Answer.seeOther(PATH + "?done=address-shown");
            },
            ledger -> Answer.seeOther(PATH + "?done=address-shown"));
    // the secret is in no kept answer: a form sent twice makes one address, which is shown once
    Made shown = made.get();
    return shown == null ? answer : Templates.page("calendar-made", shown);
  }

  private static @Nullable Female chosen(Call call, Ledger ledger, String key) {
    if (key.isEmpty()) {
      return null;
    }
    Known known = new Known(call, ledger);
    Female female = known.female(key);
    known.mustDecide(female);
    return female;
  }

  private static void note(
      Call call, Ledger ledger, String deed, CalendarAddresses.Address address) {
    Audit.of(ledger)
        .note(
            call.person(),
            deed,
            address.key(),
            address.female(),
            call.caller().address(),
            call.now());
  }

  private static Answer revoke(Call call) {
    Typed typed = Typed.of(call.form());
    return Forms.save(
        call,
        typed,
        ledger -> {
          CalendarAddresses all = CalendarAddresses.of(ledger);
          CalendarAddresses.Address address =
              all.find(call.person(), call.part("address")).orElseThrow(Refusal::notFound);
          all.revoke(address, call.now());
          note(call, ledger, "calendar-address-revoked", address);
          return Answer.seeOther(PATH + "?done=address-revoked");
        },
        ledger -> Answer.seeOther(PATH));
  }

  /** What a program gets that asks by an address: the present dates, worked out by themselves. */
  private static Answer feed(Call call) {
    Behind behind = call.read(ledger -> behind(call, ledger));
    Call keeper = call.as(behind.person());
    for (Her her : behind.all()) {
      if (!her.seasons().isEmpty()) {
        bringUpToDate(keeper, her.female(), her.seasons().get(her.seasons().size() - 1));
      }
    }
    noteUse(keeper, behind.address());
    String text = call.read(ledger -> text(ledger, behind));
    call.mayBeChecked();
    return call.unlessKnown(
        Answer.tagged(CalendarFeed.MEDIA_TYPE + "; charset=utf-8", text, Secrets.digest(text)));
  }

  private static Behind behind(Call call, Ledger ledger) {
    CalendarAddresses.Address address =
        CalendarAddresses.of(ledger).find(call.part("secret")).orElseThrow(Refusal::notFound);
    Person person =
        People.of(ledger)
            .find(address.person())
            .filter(one -> one.closedAt() == null)
            .orElseThrow(Refusal::notFound);
    List<Female> females =
        address.female() == null
            ? own(ledger, person)
            : ledger.females().find(address.female()).filter(person::mayDecide).stream().toList();
    if (address.female() != null && females.isEmpty()) {
      throw Refusal.notFound();
    }
    return new Behind(
        address,
        person,
        females.stream()
            .map(female -> new Her(female, shown(Seasons.of(ledger, female).all(), call.now())))
            .toList());
  }

  private static List<Cycle> shown(List<Cycle> all, Instant now) {
    return all.stream().filter(cycle -> began(cycle).plus(SHOWN).isAfter(now)).toList();
  }

  /** The day of first blood; where it is not known, when the season was added. */
  private static Instant began(Cycle cycle) {
    String on = Documents.text(Documents.of(cycle.document()), "firstBlood", "on");
    return on == null
        ? cycle.createdAt()
        : LocalDate.parse(on).atStartOfDay(Documents.zone(cycle)).toInstant();
  }

  /** What is due may move as days pass, and an entry may have come that no page was looked at. */
  private static void bringUpToDate(Call keeper, Female female, Cycle season) {
    if (began(season).plus(MOVES).isAfter(keeper.now())) {
      Keeping.quietly(keeper, new Known.Season(female, season));
    }
  }

  private static void noteUse(Call keeper, CalendarAddresses.Address address) {
    if (CalendarAddresses.isToBeNoted(address, keeper.now())) {
      // the dates are read whether it can be noted or not
      keeper.changed(ledger -> CalendarAddresses.of(ledger).used(address, keeper.now()));
    }
  }

  private static String text(Ledger ledger, Behind behind) {
    List<CalendarFeed.Season> seasons = new ArrayList<>();
    for (Her her : behind.all()) {
      her.seasons().forEach(cycle -> seasons.add(SeasonDates.of(ledger, her.female(), cycle)));
    }
    if (seasons.isEmpty()) {
      seasons.add(
          new CalendarFeed.Season(behind.address().key(), List.of(), behind.address().createdAt()));
    }
    Texts texts = Texts.ofPages(Locale.ROOT);
    return CalendarFeed.subscription(
        texts.say(
            "calendar.name",
            behind.address().female() == null
                ? texts.say("calendar.all")
                : Documents.name(behind.all().get(0).female(), texts)),
        seasons);
  }
}
