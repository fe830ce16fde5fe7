package io.github.tiderule.api.page.reasoning;

import io.github.tiderule.api.report.text.Shares;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.api.words.Words;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.BreedingDay;
import io.github.tiderule.engine.advice.Plan;
import io.github.tiderule.engine.advice.course.Ovulation;
import io.github.tiderule.engine.advice.course.Whelping;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
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
  static List<Compared> breeding(
      CycleRecord cycle, Advice advice, Sentences sentences, Texts texts, Words words) {
    Writing writing = new Writing(advice, sentences, texts, words);
    List<Compared> all = new ArrayList<>();
    Plan plan = advice.plan();
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
    Habits.breeding(cycle, advice).forEach(habit -> all.add(writing.of(habit, writing::judged)));
    return all;
  }

  /** When to whelp; absent where there is nothing to count from. */
  static @Nullable Compared whelping(
      CycleRecord cycle, Advice advice, Sentences sentences, Texts texts, Words words) {
    Habit habit = Habits.whelping(cycle, advice);
    Whelping whelping = advice.whelping();
    if (habit == null || whelping == null) {
      return null;
    }
    String estimate =
        texts.say(
            "thumb.whelping-estimate",
            words.shortDay(whelping.median().toLocalDate()),
            words.shortDay(whelping.p05().toLocalDate()),
            words.shortDay(whelping.p95().toLocalDate()));
    return new Writing(advice, sentences, texts, words)
        .of(habit, day -> new Judged(words.shortDay(day), estimate));
  }

  /** Puts habits into words. */
  private record Writing(Advice advice, Sentences sentences, Texts texts, Words words) {

    private interface Judging {
      Judged of(LocalDate day);
    }

    Compared of(Habit habit, Judging judging) {
      return new Compared(
          texts.say("thumb." + habit.kind()),
          habit.from().isEmpty() ? "" : texts.say("thumb.from", from(habit.from())),
          habit.note().isEmpty() ? "" : texts.say("thumb." + habit.note()),
          habit.days().stream().map(judging::of).toList());
    }

    private String from(String from) {
      return advice.trace().stream().anyMatch(line -> line.matched().contains(from))
          ? sentences.named(from).words()
          : sentences.of(from);
    }

    Judged judged(LocalDate day) {
      return new Judged(words.shortDay(day), onScale(day) + place(day));
    }

    private String onScale(LocalDate day) {
      BreedingDay found =
          advice.breedingDays().stream()
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
      Ovulation ovulation = advice.ovulation();
      if (ovulation == null) {
        return "";
      }
      long after = ChronoUnit.DAYS.between(ovulation.median().toLocalDate(), day);
      return after == 0
          ? texts.say("thumb.on-ovulation")
          : texts.count(after > 0 ? "thumb.after" : "thumb.before", Math.abs(after));
    }
  }
}
