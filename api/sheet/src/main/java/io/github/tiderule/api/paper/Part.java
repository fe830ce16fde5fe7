package io.github.tiderule.api.paper;

/** A part of a sheet. */
interface Part {

  /** Writes it, or nothing where there is nothing to say. */
  void write(Html html, Room room);
}
