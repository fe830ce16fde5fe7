package io.github.tiderule.engine.season;

import io.github.tiderule.rules.Stage;
import io.github.tiderule.rules.StageResult;
import java.util.List;

/** Runs one stage of rules over some facts. */
@FunctionalInterface
public interface StageRunner {

  StageResult run(Stage stage, List<?>... facts);
}
