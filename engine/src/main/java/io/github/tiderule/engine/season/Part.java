package io.github.tiderule.engine.season;

import jdk.jfr.Category;
import jdk.jfr.Description;
import jdk.jfr.Event;
import jdk.jfr.Label;
import jdk.jfr.Name;
import jdk.jfr.StackTrace;

/**
 * How long one part of an evaluation took, for whoever records the program with the JDK's flight
 * recorder. Where nobody does, it costs next to nothing and says nothing.
 */
@Name("io.github.tiderule.Part")
@Label("Part of an evaluation")
@Description(
    "Reading, findings and the other stages of rules; posterior, plan, tests to come, near misses")
@Category("Tiderule")
@StackTrace(false)
public final class Part extends Event {

  @Label("What")
  private final String what;

  private Part(String what) {
    this.what = what;
  }

  /** A part that begins now; it ends with {@link #commit}. */
  public static Part begun(String what) {
    Part part = new Part(what);
    part.begin();
    return part;
  }

  /** What it is about. */
  String what() {
    return what;
  }
}
