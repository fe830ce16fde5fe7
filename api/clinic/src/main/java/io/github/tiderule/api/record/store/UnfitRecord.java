package io.github.tiderule.api.record.store;

/**
 * A record that must not be used as it is: damaged, or written by a newer program. The message ends
 * a sentence that begins with the record's name.
 */
public final class UnfitRecord extends RuntimeException {

  private static final long serialVersionUID = 1L;

  UnfitRecord(String words) {
    super(words);
  }
}
