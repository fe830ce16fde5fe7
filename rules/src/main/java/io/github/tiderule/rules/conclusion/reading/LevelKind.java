package io.github.tiderule.rules.conclusion.reading;

/** What a progesterone result says: a number, a limit or a band. */
public enum LevelKind {
  VALUE,
  BELOW,
  ABOVE,
  BAND
}
