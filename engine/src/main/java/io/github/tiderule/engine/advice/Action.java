package io.github.tiderule.engine.advice;

import io.github.tiderule.rules.fact.Worded;
import io.github.tiderule.rules.sentence.Sentence;
import java.util.List;

/**
 * What to do now.
 *
 * @param headline one sentence under 140 characters
 * @param because ids of the rules it follows from
 * @param then what follows it, whole sentences: one for each way a test may turn out, or one for
 *     each way a result can be read; may be empty
 */
public record Action(Now now, Sentence headline, List<String> because, List<Sentence> then) {

  public Action {
    because = List.copyOf(because);
    then = List.copyOf(then);
  }

  /** An action with nothing more to say. */
  public Action(Now now, Sentence headline, List<String> because) {
    this(now, headline, because, List.of());
  }

  /** The kinds of things to do now. */
  public enum Now implements Worded {
    /** Draw the next test. */
    TEST("test"),
    /** Order semen, book the clinic or set out for the stud. */
    BOOK("book"),
    /** Breed within the coming day. */
    BREED("breed"),
    /** Answer a question first. */
    ANSWER("answer"),
    /** This season's window is over. */
    PASSED("passed"),
    /** See a vet; timing waits. */
    VET("vet");

    private final String word;

    Now(String word) {
      this.word = word;
    }

    @Override
    public String word() {
      return word;
    }
  }
}
