package io.github.tiderule.format.json;

/** How a document is laid out. */
public enum Layout {
  /** Two spaces a level, for people. */
  INDENTED,
  /** One line, for streams of documents. */
  ONE_LINE
}
