package io.github.tiderule.api.calendar;

import biweekly.ICalVersion;
import biweekly.ICalendar;
import biweekly.component.VAlarm;
import biweekly.component.VEvent;
import biweekly.component.VJournal;
import biweekly.io.text.ICalWriter;
import biweekly.parameter.Related;
import biweekly.property.Classification;
import biweekly.property.DateEnd;
import biweekly.property.DateStart;
import biweekly.property.LastModified;
import biweekly.property.ProductId;
import biweekly.property.RefreshInterval;
import biweekly.property.Status;
import biweekly.property.Transparency;
import biweekly.property.Trigger;
import biweekly.util.DateTimeComponents;
import biweekly.util.Duration;
import biweekly.util.ICalDate;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.rules.fact.Female;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.Date;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * Writes the dates of a season as iCalendar, RFC 5545. Moments are in UTC, which needs no zone
 * tables and means the same everywhere; estimates are whole local days. It has no METHOD: that
 * makes a message of it, to which RFC 5546 wants an organizer.
 */
public final class CalendarFeed {

  /** Media type of the text. */
  public static final String MEDIA_TYPE = "text/calendar";

  private static final String PRODUCT = "-//io.github.tiderule//Tiderule//EN";
  private static final Texts TEXTS = Texts.ofReports();

  /** A result can move a deadline within the day. */
  private static final int ASKED_EVERY_HOURS = 2;

  private static final String DOMAIN = "@tiderule.github.io";

  private CalendarFeed() {}

  /**
   * The dates of one season.
   *
   * @param key names the season among all seasons, and stays; UIDs begin with it
   * @param advice what was advised on it, in the order it was given
   * @param present stamp of a season that has no advice yet
   */
  public record Season(String key, List<AdvisedDates> advice, Instant present) {

    /** Keeps a copy of the list. */
    public Season {
      advice = List.copyOf(advice);
    }

    /** The same with another stamp while it has no advice. */
    public Season seenAt(Instant now) {
      return new Season(key, advice, now);
    }

    private Instant stamp() {
      return advice.isEmpty() ? present : last().asOf().toInstant();
    }

    private AdvisedDates last() {
      return advice.get(advice.size() - 1);
    }
  }

  /** The calendar of a season, by the parts of {@link Season}. */
  public static String text(String key, List<AdvisedDates> advice, Instant present) {
    return text(new Season(key, advice, present));
  }

  /** The calendar of a season. */
  public static String text(Season season) {
    return text(empty(), List.of(season));
  }

  /**
   * A calendar that programs ask for again and again: with the name and how often to ask, by RFC
   * 7986.
   *
   * @param name whose dates they are
   * @param seasons not empty
   */
  public static String subscription(String name, List<Season> seasons) {
    ICalendar calendar = empty();
    calendar.setName(Planned.safe(name));
    RefreshInterval often =
        new RefreshInterval(Duration.builder().hours(ASKED_EVERY_HOURS).build());
    // the standard has no usual kind of value for it; the library takes one for granted
    often.setParameter("VALUE", "DURATION");
    calendar.setRefreshInterval(often);
    return text(calendar, seasons);
  }

  private static ICalendar empty() {
    ICalendar calendar = new ICalendar();
    calendar.setVersion(ICalVersion.V2_0);
    calendar.setProductId(new ProductId(PRODUCT));
    return calendar;
  }

  private static String text(ICalendar calendar, List<Season> seasons) {
    for (Season season : seasons) {
      for (CalendarEntry entry : CalendarHistory.entries(season.advice())) {
        calendar.addEvent(event(season.key(), entry, season.stamp()));
      }
    }
    if (calendar.getEvents().isEmpty()) {
      seasons.forEach(season -> calendar.addJournal(nothing(season)));
    }
    return ContentLines.folded(unfolded(calendar));
  }

  /** The library counts characters of a line, where the standard counts octets. */
  private static String unfolded(ICalendar calendar) {
    StringWriter text = new StringWriter();
    try (ICalWriter writer = new ICalWriter(text, ICalVersion.V2_0)) {
      writer.getVObjectWriter().getFoldedLineWriter().setLineLength(null);
      writer.write(calendar);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return text.toString();
  }

  /**
   * Names the season of a cycle file: by its female and the day of first blood, so that a later
   * file of the same season has the same name. Where the file says neither, all such files share
   * one.
   */
  public static String seasonOf(CycleRecord cycle) {
    String female =
        Objects.requireNonNullElse(
            cycle.female().id(), Objects.requireNonNullElse(cycle.female().name(), ""));
    String season = female + "\n" + Objects.toString(cycle.firstBlood().on(), "");
    return "file-" + UUID.nameUUIDFromBytes(season.getBytes(StandardCharsets.UTF_8));
  }

  /** What a female is called in her calendar. */
  public static String nameOf(Female female) {
    return nameOf(female.name(), female.id());
  }

  /** The same of what is on record of her. */
  public static String nameOf(@Nullable String name, @Nullable String id) {
    return Objects.requireNonNullElse(
        name, Objects.requireNonNullElse(id, TEXTS.say("calendar.unnamed")));
  }

  private static VEvent event(String season, CalendarEntry entry, Instant stamp) {
    Planned planned = entry.planned();
    VEvent event = new VEvent();
    event.setUid(season + "-" + planned.kind().word() + "-" + entry.ordinal() + DOMAIN);
    event.setDateTimeStamp(Date.from(stamp));
    event.setLastModified(new LastModified(date(entry.changedAt())));
    event.setSequence(entry.sequence());
    event.setStatus(entry.cancelled() ? Status.cancelled() : Status.confirmed());
    event.setClassification(Classification.PRIVATE);
    event.setSummary(planned.summary());
    event.setDescription(planned.description());
    if (planned.kind().isEstimate()) {
      event.setTransparency(Transparency.transparent());
      event.setDateStart(new DateStart(day(planned.from().toLocalDate())));
      event.setDateEnd(new DateEnd(day(planned.to().toLocalDate().plusDays(1))));
    } else {
      event.setDateStart(new DateStart(date(planned.from()), true));
      if (planned.to().isAfter(planned.from())) {
        event.setDateEnd(new DateEnd(date(planned.to()), true));
      }
    }
    if (!entry.cancelled()) {
      for (int hours : planned.kind().callHours()) {
        event.addAlarm(call(hours, planned.summary()));
      }
    }
    return event;
  }

  private static VAlarm call(int hours, String words) {
    Duration before = Duration.builder().prior(true).hours(hours).build();
    return VAlarm.display(new Trigger(before, Related.START), words);
  }

  /** A calendar may not be empty; this says why there is nothing in it. */
  private static VJournal nothing(Season season) {
    VJournal journal = new VJournal();
    journal.setUid(season.key() + "-nothing" + DOMAIN);
    journal.setDateTimeStamp(Date.from(season.stamp()));
    journal.setClassification(Classification.PRIVATE);
    journal.setSummary(
        season.advice().isEmpty() ? TEXTS.say("calendar.nothing") : season.last().headline());
    return journal;
  }

  private static Date date(OffsetDateTime at) {
    return Date.from(at.toInstant());
  }

  private static ICalDate day(LocalDate day) {
    return new ICalDate(
        new DateTimeComponents(day.getYear(), day.getMonthValue(), day.getDayOfMonth()), false);
  }
}
