package io.github.tiderule.format;

/** How long a test is: short at every build, at length by night with TIDERULE_NIGHTLY=true. */
public final class Nightly {

  private static final boolean NIGHT = "true".equals(System.getenv("TIDERULE_NIGHTLY"));

  private Nightly() {}

  /** Whether everything is done at length. */
  public static boolean is() {
    return NIGHT;
  }

  /** So many at every build, and so many by night. */
  public static int of(int always, int byNight) {
    return NIGHT ? byNight : always;
  }
}
