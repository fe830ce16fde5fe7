package io.github.tiderule.engine.advice;

import io.github.tiderule.rules.conclusion.care.SheetPart;
import io.github.tiderule.rules.fact.semen.Route;
import io.github.tiderule.rules.fact.semen.Semen;
import io.github.tiderule.rules.sentence.Sentence;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What is needed on the day of insemination.
 *
 * @param at when it is to be: as the file says, or the plan's first time; absent where neither does
 * @param arithmetic the reckoning, line by line; empty where no semen is described
 * @param usable usable sperm in hand, all together; absent where a number for it is missing
 * @param doses by route
 * @param extender how much to add for what is wanted; absent where nothing is or it cannot be said
 * @param findings what the semen shows
 * @param sameDay what to do the same day about a dose below the floor; empty where none is
 * @param secondParcelBy last day on which a second parcel would still do; absent where none is
 *     asked for
 * @param steps the checklist, in the order it is done; empty where the semen is not to be used
 * @param advice on route, volume and reach; empty where the semen is not to be used
 * @param notes what is missing or does not fit, in words
 */
public record InseminationSheet(
    @Nullable OffsetDateTime at,
    Semen semen,
    Route route,
    List<Amount> arithmetic,
    @Nullable Amount usable,
    List<DosesMade> doses,
    @Nullable Amount extender,
    @Nullable SemenTemperature temperature,
    List<Warning> findings,
    List<Line> sameDay,
    @Nullable LocalDate secondParcelBy,
    List<Line> steps,
    List<Line> advice,
    List<Sentence> notes) {

  /**
   * A line that a rule wrote.
   *
   * @param veterinaryAct whether a vet does it, or has to in many countries
   * @param sources keys of the source list
   */
  public record Line(
      SheetPart part, Sentence text, boolean veterinaryAct, String rule, List<String> sources) {

    public Line {
      sources = List.copyOf(sources);
    }
  }

  /** Whether she is to be inseminated by it: it is taken along on the day. */
  public boolean isForTheDay() {
    return !steps.isEmpty();
  }

  public InseminationSheet {
    arithmetic = List.copyOf(arithmetic);
    doses = List.copyOf(doses);
    findings = List.copyOf(findings);
    sameDay = List.copyOf(sameDay);
    steps = List.copyOf(steps);
    advice = List.copyOf(advice);
    notes = List.copyOf(notes);
  }
}
