package io.github.tiderule.rules.conclusion;

/** What a reason does to a day. */
public enum Effect {
  SUPPORTS,
  OPPOSES,
  VETOES
}
