package io.github.tiderule.rules.conclusion;

import io.github.tiderule.rules.sentence.Sentence;
import java.util.List;

/** Something a rule concluded. */
public interface Conclusion {

  /** The observations it rests on, by id; may be empty. */
  List<String> observations();

  /** The conclusion, without a full stop. */
  Sentence words();

  /** The same in English, as programs are told. */
  default String sentence() {
    return words().toString();
  }
}
