package io.github.tiderule.engine.plan;

import io.github.tiderule.engine.advice.Bred;
import io.github.tiderule.engine.days.Meeting;
import io.github.tiderule.engine.days.Slot;
import io.github.tiderule.engine.explain.TraceBook;
import io.github.tiderule.engine.season.Dated;
import io.github.tiderule.engine.season.Part;
import io.github.tiderule.engine.season.Season;
import io.github.tiderule.engine.season.StageRun;
import io.github.tiderule.engine.season.Standing;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * A season with its days planned, where they may be.
 *
 * @param breeding the days ahead; null where none may be planned or none is left to breed on
 * @param bred what the breedings done are worth; null where none is done or no day may be planned
 */
public record Planned(Standing standing, @Nullable Breeding breeding, @Nullable Bred bred) {

  /** Plans, where the season stands open. */
  public static Planned of(Standing standing) {
    if (!(standing instanceof Standing.Open open)) {
      return new Planned(standing, null, null);
    }
    Part plan = Part.begun("plan");
    @Nullable Breeding breeding = Breeding.of(open.dated());
    plan.commit();
    return new Planned(standing, breeding, SoFar.of(open.dated(), breeding));
  }

  public Season season() {
    return standing.season();
  }

  /** The first slot of the plan, if there is one. */
  public Optional<Slot> first() {
    return breeding == null ? Optional.empty() : breeding.first();
  }

  /** Expected egg share of a dose given at the moment of the advice, if it could be. */
  public static double shareNow(Dated dated) {
    Season season = dated.season();
    Meeting meeting =
        season
            .tools()
            .eggs()
            .meeting(
                season.semenPlan().semen(),
                season.semenPlan().route(),
                season.tools().value("planning.chilled-age-hours"));
    return dated.mean(meeting::share);
  }

  /** The stages of rules that were run for it. */
  public List<StageRun> runs() {
    return Stream.ofNullable(breeding).map(Breeding::reasons).toList();
  }

  /** Writes down what the plan rests on. */
  public void write(TraceBook trace) {
    if (breeding != null) {
      breeding.write(trace);
    }
  }
}
