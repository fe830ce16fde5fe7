package io.github.tiderule.api.record;

import org.jdbi.v3.core.Handle;

/** The record as one piece of work sees it. Not for use after that work, nor by many threads. */
public final class Ledger {

  private final Handle handle;

  /** What one transaction reads and writes by its handle. */
  public Ledger(Handle handle) {
    this.handle = handle;
  }

  /** The females. */
  public Females females() {
    return new Females(handle);
  }

  /** Their cycles. */
  public Cycles cycles() {
    return new Cycles(handle);
  }

  /** The observations of the cycles. */
  public Entries entries() {
    return new Entries(handle);
  }

  /** What females and cycles were said to be. */
  public Revisions revisions() {
    return new Revisions(handle);
  }

  /** What is the same for every season of a kennel. */
  public Kennels kennels() {
    return new Kennels(handle);
  }

  /** The advice given. */
  public Advices advices() {
    return new Advices(handle);
  }

  /** Answers kept in case a request comes twice. */
  public KeptAnswers keptAnswers() {
    return new KeptAnswers(handle);
  }

  /** The database itself, for tables this package does not keep. */
  public Handle handle() {
    return handle;
  }
}
