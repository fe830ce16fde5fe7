package io.github.tiderule.engine.advice;

import io.github.tiderule.engine.advice.course.BeforeSeason;
import io.github.tiderule.engine.advice.course.Caesarean;
import io.github.tiderule.engine.advice.course.LookBack;
import io.github.tiderule.engine.advice.course.Ovulation;
import io.github.tiderule.engine.advice.course.Pregnancy;
import io.github.tiderule.engine.advice.course.Quantiles;
import io.github.tiderule.engine.advice.course.SeasonCourse;
import io.github.tiderule.engine.advice.course.Whelping;
import io.github.tiderule.engine.advice.reasoning.DayCount;
import io.github.tiderule.engine.advice.reasoning.Disagreement;
import io.github.tiderule.engine.advice.reasoning.Influence;
import io.github.tiderule.engine.advice.reasoning.NotFired;
import io.github.tiderule.engine.advice.reasoning.ObservationNote;
import io.github.tiderule.engine.advice.reasoning.Query;
import io.github.tiderule.engine.advice.reasoning.Stamp;
import io.github.tiderule.engine.advice.reasoning.TraceLine;
import io.github.tiderule.rules.sentence.Sentence;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * The answer to one cycle record.
 *
 * @param validUntil when the answer should be asked for again, at the latest
 * @param lhPeak absent where nothing can be said
 * @param ovulation absent where nothing can be said
 * @param breedingDays by rank, best first
 * @param plan absent where nothing can be said
 * @param nextTest absent where no test would help
 * @param noTestBecause why no test is advised, in words; absent where one is
 * @param bred absent where no breeding is done yet
 * @param pregnancy absent before a breeding is done and weeks after whelping
 * @param caesarean absent until term is near
 * @param lookBack absent until she has whelped
 * @param influence one entry for each observation the timeline used, in time order
 * @param disagreements what schools disagree about and matters here
 * @param observationNotes observations that are held, discounted, converted or set aside, and why
 * @param insemination the sheet for the day; absent where the file describes no semen and no
 *     insemination is close
 * @param beforeSeason absent where the file tells nothing of the time before a season
 * @param dayCounts what rules of thumb make of the season, to hold the plan against
 * @param course what her values do; absent where no value tells
 */
public record Advice(
    Stamp stamp,
    OffsetDateTime asOf,
    OffsetDateTime validUntil,
    @Nullable String femaleId,
    Action action,
    @Nullable Quantiles lhPeak,
    @Nullable Ovulation ovulation,
    List<BreedingDay> breedingDays,
    @Nullable Plan plan,
    @Nullable NextTest nextTest,
    @Nullable Sentence noTestBecause,
    @Nullable Bred bred,
    @Nullable Whelping whelping,
    @Nullable Pregnancy pregnancy,
    @Nullable Caesarean caesarean,
    @Nullable LookBack lookBack,
    List<Query> questions,
    List<Warning> cautions,
    List<Influence> influence,
    List<Change> wouldChange,
    List<TraceLine> trace,
    List<NotFired> notFired,
    List<Disagreement> disagreements,
    List<ObservationNote> observationNotes,
    @Nullable InseminationSheet insemination,
    @Nullable BeforeSeason beforeSeason,
    List<DayCount> dayCounts,
    @Nullable SeasonCourse course) {

  /** An answer without an insemination at hand, a pregnancy, or the checks before a season. */
  public Advice(
      Stamp stamp,
      OffsetDateTime asOf,
      OffsetDateTime validUntil,
      @Nullable String femaleId,
      Action action,
      @Nullable Quantiles lhPeak,
      @Nullable Ovulation ovulation,
      List<BreedingDay> breedingDays,
      @Nullable Plan plan,
      @Nullable NextTest nextTest,
      @Nullable Sentence noTestBecause,
      @Nullable Bred bred,
      @Nullable Whelping whelping,
      List<Query> questions,
      List<Warning> cautions,
      List<Influence> influence,
      List<Change> wouldChange,
      List<TraceLine> trace,
      List<NotFired> notFired,
      List<Disagreement> disagreements,
      List<ObservationNote> observationNotes) {
    this(
        stamp,
        asOf,
        validUntil,
        femaleId,
        action,
        lhPeak,
        ovulation,
        breedingDays,
        plan,
        nextTest,
        noTestBecause,
        bred,
        whelping,
        null,
        null,
        null,
        questions,
        cautions,
        influence,
        wouldChange,
        trace,
        notFired,
        disagreements,
        observationNotes,
        null,
        null,
        List.of(),
        null);
  }

  /** Every source its trace, its cautions and its days name, in alphabetical order, each once. */
  public List<String> sources() {
    return Stream.of(
            trace.stream().map(TraceLine::sources),
            cautions.stream().map(Warning::sources),
            breedingDays.stream().flatMap(day -> day.reasons().stream()).map(Reason::sources))
        .flatMap(keys -> keys)
        .flatMap(List::stream)
        .distinct()
        .sorted()
        .toList();
  }

  public Advice {
    breedingDays = List.copyOf(breedingDays);
    questions = List.copyOf(questions);
    cautions = List.copyOf(cautions);
    influence = List.copyOf(influence);
    wouldChange = List.copyOf(wouldChange);
    trace = List.copyOf(trace);
    notFired = List.copyOf(notFired);
    disagreements = List.copyOf(disagreements);
    observationNotes = List.copyOf(observationNotes);
    dayCounts = List.copyOf(dayCounts);
  }
}
