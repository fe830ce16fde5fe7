package io.github.tiderule.cases.corpus;

import com.fasterxml.jackson.databind.JsonNode;

/** Knows one key of an expectation. */
interface Expecting {

  /** Holds an answer against what stands under the key. */
  void check(JsonNode expected, Outcome.Advised answer, Differences differences);
}
