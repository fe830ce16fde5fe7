package io.github.tiderule.rules.fact;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * An earlier season of the same female.
 *
 * @param firstBloodOn before first blood of the present season
 * @param ovulatedOn at most 90 days after first blood, if known
 * @param dioestrusOn the first day of cytological dioestrus, at most 90 days after first blood, if
 *     seen
 * @param whelpedOn the day she whelped, at most 165 days after first blood, if she did
 * @param litterSize pups born, 0–30, if counted
 * @param pregnant whether she was pregnant, if known; never false where she whelped
 * @param kind how it was no ordinary season; absent where it was one
 */
public record EarlierCycle(
    LocalDate firstBloodOn,
    @Nullable LocalDate ovulatedOn,
    @Nullable LocalDate dioestrusOn,
    @Nullable LocalDate whelpedOn,
    @Nullable Integer litterSize,
    @Nullable Boolean pregnant,
    @Nullable EarlierKind kind) {

  /** An ordinary season. */
  public EarlierCycle(
      LocalDate firstBloodOn,
      @Nullable LocalDate ovulatedOn,
      @Nullable LocalDate dioestrusOn,
      @Nullable LocalDate whelpedOn,
      @Nullable Integer litterSize,
      @Nullable Boolean pregnant) {
    this(firstBloodOn, ovulatedOn, dioestrusOn, whelpedOn, litterSize, pregnant, null);
  }

  /** A season of which only first blood and perhaps ovulation are known. */
  public EarlierCycle(LocalDate firstBloodOn, @Nullable LocalDate ovulatedOn) {
    this(firstBloodOn, ovulatedOn, null, null, null, null);
  }

  /** A season of which only first blood is known. */
  public static EarlierCycle from(LocalDate firstBloodOn) {
    return new EarlierCycle(firstBloodOn, null);
  }

  /** With the day of ovulation, at most 90 days after first blood. */
  public EarlierCycle ovulatedOn(LocalDate day) {
    return new EarlierCycle(firstBloodOn, day, dioestrusOn, whelpedOn, litterSize, pregnant, kind);
  }

  /** With the first day of cytological dioestrus, at most 90 days after first blood. */
  public EarlierCycle dioestrusOn(LocalDate day) {
    return new EarlierCycle(firstBloodOn, ovulatedOn, day, whelpedOn, litterSize, pregnant, kind);
  }

  /** With the day she whelped, at most 165 days after first blood. */
  public EarlierCycle whelpedOn(LocalDate day) {
    return new EarlierCycle(firstBloodOn, ovulatedOn, dioestrusOn, day, litterSize, pregnant, kind);
  }

  /**
   * With the litter.
   *
   * @param pups born, 0–30
   */
  public EarlierCycle litterSize(int pups) {
    return new EarlierCycle(firstBloodOn, ovulatedOn, dioestrusOn, whelpedOn, pups, pregnant, kind);
  }

  /** With whether she was pregnant. */
  public EarlierCycle pregnant(boolean was) {
    return new EarlierCycle(
        firstBloodOn, ovulatedOn, dioestrusOn, whelpedOn, litterSize, was, kind);
  }

  /** That broke off, that came to no ovulation, or that nobody saw. */
  public EarlierCycle kind(EarlierKind how) {
    return new EarlierCycle(
        firstBloodOn, ovulatedOn, dioestrusOn, whelpedOn, litterSize, pregnant, how);
  }
}
