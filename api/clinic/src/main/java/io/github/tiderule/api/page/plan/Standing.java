package io.github.tiderule.api.page.plan;

import io.github.tiderule.api.record.Cycle;
import io.github.tiderule.api.record.EarlierSeasons;
import io.github.tiderule.api.record.Entry;
import io.github.tiderule.api.record.Female;
import io.github.tiderule.api.record.GivenAdvice;
import io.github.tiderule.api.record.Ledger;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.Reasoning;
import io.github.tiderule.engine.change.Told;
import io.github.tiderule.format.cycle.CycleText;
import io.github.tiderule.format.cycle.Reading;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.function.Function;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Where a season stands: the answer for it, and the one before. Advice that was kept is shown as it
 * was given while the record is the same, the day is the same, and it is not yet time to ask again;
 * otherwise the answer is worked out for the present moment, and is not yet kept.
 *
 * @param kept the advice that is shown; absent where what is shown is not kept
 * @param before the answer kept before this one; absent where there was none
 */
public record Standing(
    Female female,
    Cycle cycle,
    List<Entry> current,
    String file,
    Answered answered,
    @Nullable GivenAdvice kept,
    @Nullable Told before) {

  /** What of two cycle files may differ while they are the same record. */
  private static final Pattern AS_OF = Pattern.compile("\"asOf\":\"[^\"]*\"");

  private static final int LATEST = 2;

  /** An answer, with how it was reasoned. */
  public record Answered(CycleRecord cycle, Reasoning reasoning) {

    /** What people are told. */
    public Told told() {
      return new Told(cycle, reasoning.advice());
    }
  }

  /** The answer. */
  public Told told() {
    return answered.told();
  }

  /** What the record holds of a season, before anything is worked out. */
  public record Held(
      Female female,
      Cycle cycle,
      List<Entry> current,
      List<GivenAdvice> latest,
      EarlierSeasons earlier) {

    /** Reads it. */
    public static Held of(Ledger ledger, Female female, Cycle cycle) {
      return new Held(
          female,
          cycle,
          ledger.entries().current(cycle.key()),
          ledger.advices().latest(cycle.key(), LATEST),
          EarlierSeasons.of(ledger, female));
    }

    /** Whether the answer to it is kept and still in force. */
    public boolean isKept(Instant now) {
      Instant moment = cycle.moment(now);
      return !latest.isEmpty()
          && sameRecord(latest.get(0).cycleFile(), file(moment))
          && isInForce(latest.get(0), Documents.zone(cycle), moment);
    }

    /** The season as a cycle file for a moment, with what her earlier ones tell. */
    public String file(Instant moment) {
      return earlier.file(moment, cycle, current);
    }
  }

  /** Works it out. */
  public static Standing of(Held held, Instant now, Function<CycleRecord, Reasoning> reason) {
    Instant moment = held.cycle().moment(now);
    String file = held.file(moment);
    GivenAdvice last = held.latest().isEmpty() ? null : held.latest().get(0);
    if (last != null && sameRecord(last.cycleFile(), file)) {
      if (isInForce(last, Documents.zone(held.cycle()), moment)) {
        Answered answered = answered(last.cycleFile(), reason);
        GivenAdvice earlier = held.latest().size() < LATEST ? null : held.latest().get(1);
        return new Standing(
            held.female(),
            held.cycle(),
            held.current(),
            last.cycleFile(),
            answered,
            last,
            earlier == null ? null : answered(earlier.cycleFile(), reason).told());
      }
    }
    return new Standing(
        held.female(),
        held.cycle(),
        held.current(),
        file,
        answered(file, reason),
        null,
        last == null || last.asOf().isAfter(moment)
            ? null
            : answered(last.cycleFile(), reason).told());
  }

  private static boolean sameRecord(String one, String other) {
    return AS_OF.matcher(one).replaceFirst("").equals(AS_OF.matcher(other).replaceFirst(""));
  }

  private static boolean isInForce(GivenAdvice given, ZoneId zone, Instant moment) {
    return !given.asOf().isAfter(moment)
        && Kept.validUntil(given).toInstant().isAfter(moment)
        && given.asOf().atZone(zone).toLocalDate().equals(moment.atZone(zone).toLocalDate());
  }

  /** What a cycle file of the record is answered with. */
  public static Answered answered(String file, Function<CycleRecord, Reasoning> reason) {
    if (CycleText.read(file) instanceof Reading.Read read) {
      return new Answered(read.cycle(), reason.apply(read.cycle()));
    }
    throw new IllegalStateException("the record holds a season that is no cycle file");
  }
}
