package io.github.tiderule.api.page.reasoning;

import io.github.tiderule.api.report.text.Shares;
import io.github.tiderule.api.report.text.Telling;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.BreedingDay;
import io.github.tiderule.engine.advice.Plan;
import io.github.tiderule.engine.advice.course.Ovulation;
import io.github.tiderule.engine.advice.course.Whelping;
import io.github.tiderule.engine.advice.reasoning.DayCount;
import io.github.tiderule.rules.conclusion.care.Thumb;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * The days of the plan, or of a rule of thumb, as the estimator judges them.
 *
 * @param name what it goes by
 * @param from what it counts from; empty where that is nothing
 * @param note what limits it; empty where nothing does
 * @param days none where it says nothing
 */
public record Compared(String name, String from, String note, List<Judged> days) {

  /** A day and what the estimator thinks of it. */
  public record Judged(String day, String judged) {}

  /** When to breed: the plan first, then the rules of thumb. */
  static List<Compared> breeding(Advice advice, Telling telling, Texts texts) {
    Writing writing = new Writing(advice, telling, texts);
    List<Compared> all = new ArrayList<>();
    Plan plan = advice.breeding().plan();
    if (plan != null) {
      all.add(
          new Compared(
              texts.say("thumb.plan"),
              "",
              "",
              plan.at().stream()
                  .map(OffsetDateTime::toLocalDate)
                  .distinct()
                  .map(writing::judged)
                  .toList()));
    }
    advice.reasoning().dayCounts().stream()
        .filter(count -> count.kind() != Thumb.WHELPING)
        .forEach(count -> all.add(writing.of(count, writing::judged)));
    return all;
  }

  /** When to whelp; absent where there is nothing to count from. */
  static @Nullable Compared whelping(Advice advice, Telling telling, Texts texts) {
    Whelping whelping = advice.course().whelping();
    DayCount count =
        advice.reasoning().dayCounts().stream()
            .filter(one -> one.kind() == Thumb.WHELPING)
            .findFirst()
            .orElse(null);
    if (count == null || whelping == null) {
      return null;
    }
    String estimate =
        texts.say(
            "thumb.whelping-estimate",
            telling.words().shortDay(whelping.median().toLocalDate()),
            telling.words().shortDay(whelping.p05().toLocalDate()),
            telling.words().shortDay(whelping.p95().toLocalDate()));
    return new Writing(advice, telling, texts)
        .of(count, day -> new Judged(telling.words().shortDay(day), estimate));
  }

  /** Puts rules of thumb into words. */
  private record Writing(Advice advice, Telling telling, Texts texts) {

    private interface Judging {
      Judged of(LocalDate day);
    }

    Compared of(DayCount count, Judging judging) {
      return new Compared(
          telling.say(count.text()),
          count.from() == null ? "" : texts.say("thumb.from", from(count)),
          count.but() == null ? "" : telling.say(count.but()),
          count.days().stream().map(judging::of).toList());
    }

    private String from(DayCount count) {
      return count.observations().isEmpty()
          ? telling.words().shortDay(Objects.requireNonNull(count.from()))
          : telling.observation(count.observations().get(0));
    }

    Judged judged(LocalDate day) {
      return new Judged(telling.words().shortDay(day), onScale(day) + place(day));
    }

    private String onScale(LocalDate day) {
      BreedingDay found =
          advice.breeding().days().stream()
              .filter(one -> one.day().equals(day))
              .findFirst()
              .orElse(null);
      return found == null
          ? texts.say(day.isBefore(advice.asOf().toLocalDate()) ? "thumb.past" : "thumb.outside")
          : texts.say(
              "thumb.judged",
              Shares.number(found.eggShare().mean()),
              texts.word("verdict", found.verdict().word()));
    }

    private String place(LocalDate day) {
      Ovulation ovulation = advice.timing().ovulation();
      if (ovulation == null) {
        return "";
      }
      long after = ChronoUnit.DAYS.between(ovulation.median().toLocalDate(), day);
      return after == 0
          ? texts.say("thumb.on-ovulation")
          : after > 0 ? texts.count("thumb.after", after) : texts.count("thumb.before", -after);
    }
  }
}
