package io.github.tiderule.engine;

import io.github.tiderule.rules.Stage;
import io.github.tiderule.rules.StageResult;
import java.util.List;

/** Runs one stage of rules over some facts. */
@FunctionalInterface
interface StageRunner {

  StageResult run(Stage stage, List<?>... facts);
}
