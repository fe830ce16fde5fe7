package io.github.tiderule.rules.condition;

import io.github.tiderule.rules.sentence.Sentence;
import org.jspecify.annotations.Nullable;

/**
 * One test of a condition with what it saw.
 *
 * @param words what it asks for, in plain words
 * @param written the test as the rule file writes it
 * @param saw the value it saw; absent where there was none to see
 */
public record CheckSeen(Sentence words, String written, Outcome outcome, @Nullable Sentence saw) {

  /** Whether its words are no others than those of the rule file. */
  public boolean isAsWritten() {
    return words.equals(Sentence.quoted(written));
  }
}
