package io.github.tiderule.api.page.form;

import io.github.tiderule.api.words.Texts;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Days and times of a form, which are local to where she is. */
public final class LocalTimes {

  private static final DateTimeFormatter WRITTEN =
      DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ssXXX");

  private LocalTimes() {}

  /** A moment as the input of a form takes it. */
  public static String shown(Instant at, ZoneId zone) {
    return at.atZone(zone).toLocalDateTime().truncatedTo(ChronoUnit.MINUTES).toString();
  }

  /** A moment of a document as the input of a form takes it. */
  static String shown(String written, ZoneId zone) {
    return shown(OffsetDateTime.parse(written).toInstant(), zone);
  }

  /**
   * The moment in a field as a document writes it; absent where it is empty or cannot be read,
   * which is then said. A time that comes twice, or not at all, when clocks change is refused.
   */
  static @Nullable String moment(Typed typed, String name, ZoneId zone, Texts texts) {
    if (!typed.has(name)) {
      return null;
    }
    try {
      LocalDateTime local = LocalDateTime.parse(typed.value(name));
      List<ZoneOffset> offsets = zone.getRules().getValidOffsets(local);
      if (offsets.size() == 1) {
        return WRITTEN.format(local.atOffset(offsets.get(0)));
      }
      typed.refuse(name, texts.say("fault.clocks-change"));
    } catch (DateTimeException e) {
      typed.refuse(name, texts.say("fault.moment", typed.value(name)));
    }
    return null;
  }

  /** The day in a field; absent where it is empty or cannot be read, which is then said. */
  static @Nullable LocalDate day(Typed typed, String name, Texts texts) {
    if (!typed.has(name)) {
      return null;
    }
    try {
      return LocalDate.parse(typed.value(name));
    } catch (DateTimeException e) {
      typed.refuse(name, texts.say("fault.day", typed.value(name)));
      return null;
    }
  }

  /** The clock time in a field, as a document writes it. */
  static @Nullable String clock(Typed typed, String name, Texts texts) {
    if (!typed.has(name)) {
      return null;
    }
    try {
      return LocalTime.parse(typed.value(name)).truncatedTo(ChronoUnit.MINUTES).toString();
    } catch (DateTimeException e) {
      typed.refuse(name, texts.say("fault.clock", typed.value(name)));
      return null;
    }
  }
}
