package io.github.tiderule.engine.explain;

import io.github.tiderule.engine.advice.reasoning.ObservationNote;
import io.github.tiderule.engine.advice.reasoning.ObservationUse;
import io.github.tiderule.engine.season.Read;
import io.github.tiderule.engine.season.StageRun;
import io.github.tiderule.rules.StageResult;
import io.github.tiderule.rules.conclusion.Conclusion;
import io.github.tiderule.rules.conclusion.SetAside;
import io.github.tiderule.rules.conclusion.reading.Converted;
import io.github.tiderule.rules.conclusion.reading.Discounted;
import io.github.tiderule.rules.conclusion.reading.Held;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Says of each observation that is not taken simply as reported, how it is taken and why. */
public final class ObservationNotes {

  private final List<ObservationNote> notes = new ArrayList<>();

  private ObservationNotes() {}

  /** The notes by observation, then by rule. */
  public static List<ObservationNote> of(Read read) {
    ObservationNotes all = new ObservationNotes();
    all.add(read.reading(), Held.class, ObservationUse.HELD);
    all.add(read.reading(), Discounted.class, ObservationUse.DISCOUNTED);
    all.add(read.reading(), Converted.class, ObservationUse.CONVERTED);
    all.addSetAside(read.found());
    return all.notes.stream()
        .distinct()
        .sorted(
            Comparator.comparing(ObservationNote::observation)
                .thenComparing(ObservationNote::rule)
                .thenComparing(note -> note.text().toString()))
        .toList();
  }

  /** Each once: for what reason a result was set aside first is enough. */
  private void addSetAside(StageRun findings) {
    Set<String> told = new HashSet<>();
    findings
        .ruled(SetAside.class)
        .filter(ruled -> told.add(ruled.conclusion().observation()))
        .forEach(ruled -> notes.add(note(ruled, ObservationUse.SET_ASIDE)));
  }

  private <T extends Conclusion> void add(StageRun result, Class<T> kind, ObservationUse use) {
    result.ruled(kind).forEach(ruled -> notes.add(note(ruled, use)));
  }

  private static ObservationNote note(
      StageResult.Ruled<? extends Conclusion> ruled, ObservationUse use) {
    return new ObservationNote(
        ruled.conclusion().observations().get(0),
        use,
        ruled.conclusion().words(),
        ruled.rule().id(),
        ruled.rule().sources());
  }
}
