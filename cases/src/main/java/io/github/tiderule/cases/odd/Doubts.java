package io.github.tiderule.cases.odd;

import io.github.tiderule.engine.advice.Action;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.course.Ovulation;
import io.github.tiderule.engine.advice.course.SeasonCourse;
import io.github.tiderule.engine.advice.reasoning.ObservationUse;
import io.github.tiderule.rules.conclusion.CourseKind;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * What an answer says it doubts. Only what a reader is told counts: questions, observations held,
 * values more likely odd than not, a course of her values that no ordinary season takes, a vet
 * first, and that she probably does not ovulate.
 *
 * @param observations ids of the observations in doubt
 * @param asked what is asked about
 * @param general whether the season itself is in doubt
 * @param unconfirmed the observation on which all is told to rest, until a later one bears it out;
 *     that is a reservation and no doubt
 * @param misfit whether she is told that her results do not fit together, and to check each of them
 *     against its report
 */
record Doubts(
    Set<String> observations,
    Set<String> asked,
    boolean general,
    Set<String> unconfirmed,
    boolean misfit) {

  private static final String FIRST_BLOOD = "firstBlood";

  private static final double MORE_LIKELY_THAN_NOT = 0.5;

  /** What her values are told to do that no ordinary season does. */
  private static final Set<CourseKind> ODD_COURSES =
      Set.of(
          CourseKind.FELL_BACK,
          CourseKind.FALLING_LATE,
          CourseKind.FALLING,
          CourseKind.ODD_VALUE,
          CourseKind.SHOWS_AGAIN,
          CourseKind.BROKEN_OFF,
          CourseKind.STANDING_STILL,
          CourseKind.PAUSE,
          CourseKind.NO_RISE);

  Doubts {
    observations = Set.copyOf(observations);
    asked = Set.copyOf(asked);
    unconfirmed = Set.copyOf(unconfirmed);
  }

  static Doubts of(Advice advice) {
    Set<String> observations = new HashSet<>();
    Set<String> asked = new HashSet<>();
    advice.questions().forEach(question -> asked.add(question.about()));
    advice.reasoning().observationNotes().stream()
        .filter(note -> note.use() == ObservationUse.HELD)
        .forEach(note -> observations.add(note.observation()));
    advice.reasoning().influence().stream()
        .filter(influence -> influence.oddProbability() > MORE_LIKELY_THAN_NOT)
        .forEach(influence -> observations.add(influence.observation()));
    SeasonCourse course = advice.timing().seasonCourse();
    boolean oddCourse = false;
    if (course != null && ODD_COURSES.contains(course.kind())) {
      oddCourse = true;
      observations.addAll(course.observations());
    }
    List<String> unconfirmed =
        course != null && course.kind() == CourseKind.UNCONFIRMED
            ? course.observations()
            : List.of();
    Ovulation ovulation = advice.timing().ovulation();
    Action.Now now = advice.action().now();
    boolean general =
        oddCourse
            || now == Action.Now.VET
            // to ask stud or clinic for another time doubts nothing of hers
            || (now == Action.Now.ANSWER && !advice.questions().isEmpty())
            || (ovulation != null && ovulation.noOvulationProbability() >= MORE_LIKELY_THAN_NOT);
    boolean misfit = course != null && course.kind() == CourseKind.FITS_NOTHING;
    return new Doubts(observations, asked, general, Set.copyOf(unconfirmed), misfit);
  }

  boolean any() {
    return misfit || anyAtFirst();
  }

  /** The same without results that are told not to fit together. */
  boolean anyAtFirst() {
    return general || !observations.isEmpty() || !asked.isEmpty();
  }

  boolean about(String observation) {
    return misfit || aboutAtFirst(observation);
  }

  /** The same without results that are told not to fit together. */
  boolean aboutAtFirst(String observation) {
    return observations.contains(observation) || asked.contains(observation);
  }

  /** Whether the answer says that its days rest on one value that may mislead. */
  boolean reserved() {
    return !unconfirmed.isEmpty();
  }

  /** Whether all is told to rest on an observation. */
  boolean restsOn(String observation) {
    return unconfirmed.contains(observation);
  }

  boolean aboutFirstBlood() {
    return asked.stream().anyMatch(about -> about.startsWith(FIRST_BLOOD));
  }
}
