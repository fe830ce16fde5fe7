package io.github.tiderule.engine.season;

import io.github.tiderule.rules.Stage;
import io.github.tiderule.rules.StageResult.Ruled;
import io.github.tiderule.rules.conclusion.Course;
import io.github.tiderule.rules.conclusion.CourseKind;
import io.github.tiderule.rules.conclusion.Finding;
import io.github.tiderule.rules.conclusion.FindingKind;
import io.github.tiderule.rules.conclusion.SetAside;
import io.github.tiderule.rules.conclusion.reading.Accepted;
import io.github.tiderule.rules.conclusion.reading.Discounted;
import io.github.tiderule.rules.conclusion.reading.Held;
import io.github.tiderule.rules.conclusion.reading.Level;
import io.github.tiderule.rules.conclusion.reading.Question;
import io.github.tiderule.rules.fact.Forecast;
import io.github.tiderule.rules.fact.observation.BreedingDone;
import io.github.tiderule.rules.fact.observation.Observation;
import io.github.tiderule.rules.fact.observation.Progesterone;
import io.github.tiderule.rules.fact.observation.ProgesteroneBand;
import io.github.tiderule.rules.sentence.Sentence;
import java.time.Instant;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * A season as the first two stages of rules read it.
 *
 * @param reading what became of each observation
 * @param found what the accepted ones show
 */
public record Read(Season season, StageRun reading, StageRun found) {

  /** Findings that leave timing to a vet. */
  private static final Set<FindingKind> VET_ONLY =
      Set.of(
          FindingKind.TREATED_CYCLE,
          FindingKind.FALL_TO_BASE,
          FindingKind.LUTEAL_FALL,
          FindingKind.NOT_OVULATING,
          FindingKind.PROLONGED_HEAT);

  private static final Set<FindingKind> PROOF =
      Set.of(FindingKind.PROVEN_OVULATION, FindingKind.DIOESTROUS_SHIFT, FindingKind.SCAN_OVULATED);

  /** What her values do while her days lie open. */
  private static final Set<CourseKind> OPEN =
      Set.of(CourseKind.FITS_NOTHING, CourseKind.STANDING_STILL, CourseKind.RISING_AGAIN);

  /** Runs both stages; the second knows nothing of a date that the first holds. */
  public static Read of(Season filed) {
    StageRun reading =
        filed.run(Stage.READING, filed.observations(), filed.earlierCycles(), filed.treatments());
    Season season = filed.without(held(reading));
    return new Read(season, reading, found(season, reading, List.of()));
  }

  /** The same, with what is found held against the estimate made of it. */
  Read against(Forecast forecast) {
    double poor = season.tools().value("findings.fit.poor");
    double likely = season.tools().value("findings.no-ovulation.likely");
    boolean speaks = forecast.fit() < poor || forecast.noOvulationProbability() > likely;
    boolean behind = forecast.daysToMedian() < 0 && has(FindingKind.STILL_BASAL);
    return speaks || behind || has(FindingKind.RISE_BEYOND)
        ? new Read(season, reading, found(season, reading, List.of(forecast)))
        : this;
  }

  private static StageRun found(Season season, StageRun reading, List<Forecast> forecast) {
    return season.run(
        Stage.FINDINGS,
        forecast,
        accepted(season, reading, one -> !isProgesterone(one)),
        reading.all(Level.class),
        reading.all(Question.class),
        season.earlierCycles(),
        season.treatments(),
        List.of(season.semenPlan(), season.outcome()));
  }

  private static Set<String> held(StageRun reading) {
    return reading.all(Held.class).stream().map(Held::observation).collect(Collectors.toSet());
  }

  /** Accepted progesterone results, as rules read them. */
  public List<Level> levels() {
    return reading.all(Level.class);
  }

  /** Accepted observations other than progesterone. */
  public List<Observation> accepted() {
    return accepted(season, reading, one -> !isProgesterone(one));
  }

  /** Accepted progesterone results, as they came. */
  public List<Observation> acceptedProgesterone() {
    return accepted(season, reading, Read::isProgesterone);
  }

  private static List<Observation> accepted(
      Season season, StageRun reading, Predicate<Observation> wanted) {
    Set<String> ids =
        reading.all(Accepted.class).stream().map(Accepted::observation).collect(Collectors.toSet());
    return season.observations().stream()
        .filter(one -> ids.contains(one.id()))
        .filter(wanted)
        .toList();
  }

  private static boolean isProgesterone(Observation one) {
    return one instanceof Progesterone || one instanceof ProgesteroneBand;
  }

  public List<Held> held() {
    return reading.all(Held.class);
  }

  /** What is asked, each choice between two readings of one result once. */
  public List<Question> questions() {
    Set<List<Object>> choices = new HashSet<>();
    return reading.all(Question.class).stream()
        .filter(
            question ->
                question.readings().isEmpty()
                    || choices.add(List.of(question.about(), question.readings())))
        .toList();
  }

  List<Discounted> discounted() {
    return reading.all(Discounted.class);
  }

  public List<Finding> findings() {
    return found.all(Finding.class);
  }

  /** Ids of observations that the timeline must not use. */
  Set<String> setAside() {
    return found.all(SetAside.class).stream()
        .map(SetAside::observation)
        .collect(Collectors.toUnmodifiableSet());
  }

  public boolean has(FindingKind... kinds) {
    List<FindingKind> wanted = Arrays.asList(kinds);
    return findings().stream().anyMatch(finding -> wanted.contains(finding.kind()));
  }

  /** Whether only a vet can time this season. */
  public boolean vetOnly() {
    return findings().stream().anyMatch(finding -> VET_ONLY.contains(finding.kind()));
  }

  /** What her values do, with the rule that says so: the most pressing, then the latest. */
  public Optional<Ruled<Course>> course() {
    return found
        .ruled(Course.class)
        .min(
            Comparator.comparing((Ruled<Course> ruled) -> ruled.conclusion().kind())
                .thenComparing(ruled -> ruled.conclusion().since(), Comparator.reverseOrder())
                .thenComparing(ruled -> ruled.rule().id())
                .thenComparing(ruled -> ruled.conclusion().sentence()));
  }

  /** Whether her values do something that comes before any date. */
  public boolean unsettled() {
    return course().map(ruled -> ruled.conclusion().lead() != null).orElse(false);
  }

  /**
   * Whether what her values do leaves open when she ovulates, whatever the estimate's middle is.
   */
  public boolean open() {
    return !proven()
        && course().filter(ruled -> OPEN.contains(ruled.conclusion().kind())).isPresent();
  }

  /** What an earlier answer may have taken for proof and holds no longer; null where nothing. */
  public @Nullable Sentence withdrawn() {
    return findings().stream()
        .filter(finding -> finding.kind() == FindingKind.PROOF_WITHDRAWN)
        .map(Finding::words)
        .findFirst()
        .orElse(null);
  }

  /** Whether the season stopped before its surge. */
  public boolean brokenOff() {
    return has(FindingKind.SPLIT_HEAT, FindingKind.SHOWS_AGAIN);
  }

  /** Whether something proves that she has ovulated. */
  public boolean proven() {
    return findings().stream().anyMatch(finding -> PROOF.contains(finding.kind()));
  }

  /** Whether she came late and a full smear says that there may still be time. */
  public boolean lateWithFullSmear() {
    return findings().stream()
        .anyMatch(
            finding ->
                finding.kind() == FindingKind.LATE_PRESENTATION
                    && finding.observations().size() > 1);
  }

  /** Whether she came late and no smear says whether her fertile days are over. */
  public boolean lateByValueAlone() {
    return has(FindingKind.LATE_UNSEEN);
  }

  /** Whether she came late and a smear of the last day is still full, neutrophils or not. */
  public boolean lateButOpen() {
    Instant since =
        season.asOf().minusSeconds(Math.round(3600 * season.tools().value("planning.smear-hours")));
    return has(FindingKind.LATE_PRESENTATION)
        && findings().stream()
            .filter(
                finding ->
                    finding.kind() == FindingKind.FULL_CORNIFICATION
                        || finding.kind() == FindingKind.FIRST_NEUTROPHILS)
            .flatMap(finding -> finding.observations().stream())
            .anyMatch(
                id ->
                    accepted().stream()
                        .anyMatch(one -> one.id().equals(id) && !one.at().isBefore(since)));
  }

  /** Breedings already done. */
  public List<BreedingDone> breedings() {
    return accepted().stream()
        .filter(BreedingDone.class::isInstance)
        .map(BreedingDone.class::cast)
        .toList();
  }
}
