package io.github.tiderule.engine.season;

import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.rules.StageResult;
import io.github.tiderule.rules.conclusion.Finding;
import io.github.tiderule.rules.conclusion.FindingKind;
import io.github.tiderule.rules.conclusion.SetAside;
import io.github.tiderule.rules.conclusion.reading.Accepted;
import io.github.tiderule.rules.conclusion.reading.Discounted;
import io.github.tiderule.rules.conclusion.reading.Held;
import io.github.tiderule.rules.conclusion.reading.Level;
import io.github.tiderule.rules.conclusion.reading.Question;
import io.github.tiderule.rules.fact.observation.BreedingDone;
import io.github.tiderule.rules.fact.observation.Observation;
import io.github.tiderule.rules.fact.observation.Progesterone;
import io.github.tiderule.rules.fact.observation.ProgesteroneBand;
import io.github.tiderule.rules.fact.observation.Smear;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/** What the first two stages of rules made of a cycle's observations. */
public record Findings(
    List<Level> levels,
    List<Observation> accepted,
    List<Observation> acceptedProgesterone,
    List<Held> held,
    List<Question> questions,
    List<Discounted> discounted,
    List<Finding> findings,
    Set<String> setAside) {

  /** Findings that leave timing to a vet. */
  private static final Set<FindingKind> VET_ONLY =
      Set.of(FindingKind.TREATED_CYCLE, FindingKind.FALL_TO_BASE, FindingKind.PROLONGED_HEAT);

  private static final Set<FindingKind> PROOF =
      Set.of(FindingKind.PROVEN_OVULATION, FindingKind.DIOESTROUS_SHIFT, FindingKind.SCAN_OVULATED);

  /** Observations other than progesterone that the reading stage accepted. */
  public static List<Observation> accepted(CycleRecord cycle, StageResult reading) {
    Set<String> ids =
        reading.all(Accepted.class).stream().map(Accepted::observation).collect(Collectors.toSet());
    return cycle.observations().stream()
        .filter(o -> ids.contains(o.id()))
        .filter(o -> !(o instanceof Progesterone) && !(o instanceof ProgesteroneBand))
        .toList();
  }

  /** Progesterone results that the reading stage accepted, as they came. */
  static List<Observation> acceptedProgesterone(CycleRecord cycle, StageResult reading) {
    Set<String> ids = acceptedIds(reading);
    return cycle.observations().stream()
        .filter(o -> ids.contains(o.id()))
        .filter(o -> o instanceof Progesterone || o instanceof ProgesteroneBand)
        .toList();
  }

  private static Set<String> acceptedIds(StageResult reading) {
    return reading.all(Accepted.class).stream()
        .map(Accepted::observation)
        .collect(Collectors.toSet());
  }

  public static Findings of(CycleRecord cycle, StageResult reading, StageResult findings) {
    return new Findings(
        reading.all(Level.class),
        accepted(cycle, reading),
        acceptedProgesterone(cycle, reading),
        reading.all(Held.class),
        reading.all(Question.class),
        reading.all(Discounted.class),
        findings.all(Finding.class),
        findings.all(SetAside.class).stream()
            .map(SetAside::observation)
            .collect(Collectors.toUnmodifiableSet()));
  }

  public boolean has(FindingKind... kinds) {
    List<FindingKind> wanted = Arrays.asList(kinds);
    return findings.stream().anyMatch(finding -> wanted.contains(finding.kind()));
  }

  /** Whether only a vet can time this season. */
  public boolean vetOnly() {
    return findings.stream().anyMatch(finding -> VET_ONLY.contains(finding.kind()));
  }

  /** Whether something proves that she has ovulated. */
  public boolean proven() {
    return findings.stream().anyMatch(finding -> PROOF.contains(finding.kind()));
  }

  /** Whether she came late and a full smear says that there may still be time. */
  public boolean lateWithFullSmear() {
    return findings.stream()
        .anyMatch(
            finding ->
                finding.kind() == FindingKind.LATE_PRESENTATION
                    && finding.observations().size() > 1);
  }

  /** Whether she came late and nothing but the value has been looked at. */
  public boolean lateByValueAlone() {
    return has(FindingKind.LATE_PRESENTATION)
        && !has(FindingKind.DIOESTROUS_SHIFT, FindingKind.FOLDS_PAST)
        && accepted.stream().noneMatch(Smear.class::isInstance);
  }

  /** Breedings already done. */
  public List<BreedingDone> breedings() {
    return accepted.stream()
        .filter(BreedingDone.class::isInstance)
        .map(BreedingDone.class::cast)
        .toList();
  }
}
