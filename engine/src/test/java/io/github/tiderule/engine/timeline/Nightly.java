package io.github.tiderule.engine.timeline;

/** How long a test is: short at every build, at length by night with TIDERULE_NIGHTLY=true. */
final class Nightly {

  private static final boolean NIGHT = "true".equals(System.getenv("TIDERULE_NIGHTLY"));

  private Nightly() {}

  /** So many at every build, and so many by night. */
  static int of(int always, int byNight) {
    return NIGHT ? byNight : always;
  }
}
