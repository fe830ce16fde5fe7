package io.github.tiderule.format.problem;

/** A JSON Pointer (RFC 6901), built downwards from the root of a document. */
public record Pointer(String text) {

  /** The document as a whole. */
  public static final Pointer ROOT = new Pointer("");

  /** The place of a key in the object here. */
  public Pointer child(String key) {
    return new Pointer(text + "/" + key.replace("~", "~0").replace("/", "~1"));
  }

  /** The place of an entry in the list here, from 0. */
  public Pointer child(int index) {
    return new Pointer(text + "/" + index);
  }

  @Override
  public String toString() {
    return text;
  }
}
