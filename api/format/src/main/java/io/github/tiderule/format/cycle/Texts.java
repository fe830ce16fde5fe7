package io.github.tiderule.format.cycle;

/** How long texts may be, in characters. */
final class Texts {

  static final int ID = 64;
  static final int NAME = 120;
  static final int AS_REPORTED = 200;

  private Texts() {}
}
