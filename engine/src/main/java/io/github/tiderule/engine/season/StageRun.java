package io.github.tiderule.engine.season;

import io.github.tiderule.rules.Account;
import io.github.tiderule.rules.Stage;
import io.github.tiderule.rules.StageResult;
import io.github.tiderule.rules.conclusion.Conclusion;
import java.util.List;
import java.util.stream.Stream;

/**
 * One stage of rules as it was run over a season.
 *
 * @param account why its rules spoke or kept silent
 */
public record StageRun(Stage stage, StageResult result, Account account) {

  /** All conclusions of one kind, in order. */
  public <T extends Conclusion> List<T> all(Class<T> kind) {
    return result.all(kind);
  }

  /** All conclusions of one kind, each with the rule that drew it. */
  public <T extends Conclusion> Stream<StageResult.Ruled<T>> ruled(Class<T> kind) {
    return result.ruled(kind);
  }
}
