package io.github.tiderule.api.page.plan;

import io.github.tiderule.api.access.Person;
import io.github.tiderule.api.calendar.AdvisedDates;
import io.github.tiderule.api.calendar.EntryKind;
import io.github.tiderule.api.calendar.Planned;
import io.github.tiderule.api.record.Cycle;
import io.github.tiderule.api.record.Female;
import io.github.tiderule.api.record.GivenAdvice;
import io.github.tiderule.api.record.Ledger;
import io.github.tiderule.api.record.table.Page;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.api.words.Words;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * What is due today and tomorrow, over all females somebody sees, soonest first: read from the
 * advice on file, as it was given. What is past is left out, and so is ovulation, which nobody
 * does.
 */
public final class DueSoon {

  private final Instant now;
  private final Texts texts;
  private final Words words;
  private final List<Item> items = new ArrayList<>();

  /**
   * One thing that is due.
   *
   * @param at what it is sorted by
   * @param when today or tomorrow, with the hours where it has some
   * @param what who, and what is to be done
   * @param season key of the season
   */
  public record Item(Instant at, String when, String what, String season) {}

  private DueSoon(Instant now, Texts texts, Words words) {
    this.now = now;
    this.texts = texts;
    this.words = words;
  }

  /** For whoever looks. */
  public static List<Item> of(Ledger ledger, Person person, Instant now, Texts texts, Words words) {
    DueSoon soon = new DueSoon(now, texts, words);
    Page.Wanted wanted = Page.Wanted.FIRST;
    while (wanted != null) {
      Page<Female> page =
          ledger.females().seenBy(person.key(), person.role().isOfTheClinic(), wanted);
      page.items().forEach(female -> soon.add(ledger, female));
      wanted = page.next() == null ? null : new Page.Wanted(page.next(), wanted.limit());
    }
    soon.items.sort(Comparator.comparing(Item::at).thenComparing(Item::what));
    return List.copyOf(soon.items);
  }

  private void add(Ledger ledger, Female female) {
    Cycle last = Seasons.of(ledger, female).last();
    if (last == null) {
      return;
    }
    for (GivenAdvice given : ledger.advices().latest(last.key(), 1)) {
      ZonedDateTime here = now.atZone(Documents.zone(last));
      AdvisedDates.of(given.answer(), Documents.name(female, texts)).planned().stream()
          .filter(one -> isDue(one, here))
          .forEach(one -> items.add(item(one, here, last.key())));
    }
  }

  private static boolean isDue(Planned one, ZonedDateTime here) {
    LocalDate today = here.toLocalDate();
    boolean over =
        one.kind().isEstimate()
            ? one.to().toLocalDate().isBefore(today)
            : one.isPast(here.toOffsetDateTime());
    LocalDate begins = (one.kind().isDeadline() ? one.to() : one.from()).toLocalDate();
    return one.kind() != EntryKind.OVULATION && !over && !begins.isAfter(today.plusDays(1));
  }

  private Item item(Planned one, ZonedDateTime here, String season) {
    OffsetDateTime at = one.kind().isDeadline() ? one.to() : one.from();
    String day =
        texts.say(at.toLocalDate().isAfter(here.toLocalDate()) ? "home.tomorrow" : "home.today");
    boolean hours = !one.kind().isEstimate() && !one.kind().isDeadline();
    String clock =
        one.from().isEqual(one.to()) ? words.clock(one.from()) : words.window(one.from(), one.to());
    return new Item(
        at.toInstant(), hours ? texts.say("home.at", day, clock) : day, one.summary(), season);
  }
}
