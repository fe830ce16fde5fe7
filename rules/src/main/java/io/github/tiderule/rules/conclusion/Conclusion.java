package io.github.tiderule.rules.conclusion;

import java.util.List;

/** Something a rule concluded. */
public interface Conclusion {

  /** The observations it rests on, by id; may be empty. */
  List<String> observations();

  /** The conclusion in plain words, without a full stop. */
  String sentence();
}
