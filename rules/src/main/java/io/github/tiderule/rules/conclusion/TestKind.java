package io.github.tiderule.rules.conclusion;

/** A kind of test that can be advised. */
public enum TestKind {
  PROGESTERONE,
  LH,
  CYTOLOGY
}
