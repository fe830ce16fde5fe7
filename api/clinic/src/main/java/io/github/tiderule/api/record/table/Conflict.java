package io.github.tiderule.api.record.table;

/** The record is not, or no longer, as the change takes it to be. Nothing was changed. */
public final class Conflict extends RuntimeException {

  private static final long serialVersionUID = 1L;

  /** What is in the way. */
  public enum Kind {
    /** Somebody changed the thing since it was read. */
    CHANGED,
    /** Something of that name is there already. */
    TAKEN,
    /** The observation was taken back; it can only be added anew under another id. */
    RETRACTED
  }

  private final Kind kind;

  /** A conflict of a kind; the message is for people. */
  public Conflict(Kind kind, String message) {
    super(message);
    this.kind = kind;
  }

  /** What is in the way. */
  public Kind kind() {
    return kind;
  }
}
