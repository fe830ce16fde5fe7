package io.github.tiderule.rules.fact;

/** An enumeration constant with a fixed word for files and reports. */
public interface Worded {

  /** The word used in cycle files and reports; unique within its enumeration. */
  String word();
}
