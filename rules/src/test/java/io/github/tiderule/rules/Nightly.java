package io.github.tiderule.rules;

/** How long a test is: short at every build, at length by night with TIDERULE_NIGHTLY=true. */
final class Nightly {

  private static final boolean NIGHT = "true".equals(System.getenv("TIDERULE_NIGHTLY"));

  private Nightly() {}

  /** One thing at every build, another by night. */
  static <T> T of(T always, T byNight) {
    return NIGHT ? byNight : always;
  }
}
