package io.github.tiderule.rules.fact;

/** What goes by the id of an observation. */
public interface Named {

  /** The id of the observation. */
  String named();
}
