package io.github.tiderule.engine.action;

import io.github.tiderule.engine.advice.Action;
import io.github.tiderule.engine.advice.Action.Now;
import io.github.tiderule.engine.season.Read;
import io.github.tiderule.engine.season.Standing;
import io.github.tiderule.rules.StageResult.Ruled;
import io.github.tiderule.rules.conclusion.Course;
import io.github.tiderule.rules.conclusion.CourseKind;
import io.github.tiderule.rules.sentence.Sentence;
import java.util.List;
import java.util.Optional;

/** Says what is done first where her values do something that comes before any date. */
final class CourseChoice {

  private final Standing standing;
  private final Read read;

  CourseChoice(Standing standing) {
    this.standing = standing;
    read = standing.read();
  }

  /** What the most pressing course calls for, if it calls for anything. */
  Optional<Action> action() {
    return read.course()
        .flatMap(
            ruled ->
                lead(ruled).map(lead -> new Action(now(ruled), lead, List.of(ruled.rule().id()))));
  }

  /** Whether nothing is planned on her values before another one. */
  boolean waiting() {
    return read.course().map(ruled -> ruled.conclusion().waits()).orElse(false);
  }

  /** The words of it. */
  Optional<Sentence> lead() {
    return read.course().flatMap(CourseChoice::lead);
  }

  private static Optional<Sentence> lead(Ruled<Course> ruled) {
    return Optional.ofNullable(ruled.conclusion().lead());
  }

  private Now now(Ruled<Course> ruled) {
    return standing.silent()
        ? Now.VET
        : ruled.conclusion().kind() == CourseKind.SHOWS_AGAIN ? Now.ANSWER : Now.TEST;
  }
}
