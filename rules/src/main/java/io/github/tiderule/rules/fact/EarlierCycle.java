package io.github.tiderule.rules.fact;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * An earlier season of the same female.
 *
 * @param dioestrusOn the first day of cytological dioestrus, if seen
 * @param whelpedOn the day she whelped, if she did
 * @param litterSize pups born, if counted
 * @param pregnant whether she was pregnant, if known
 */
public record EarlierCycle(
    LocalDate firstBloodOn,
    @Nullable LocalDate ovulatedOn,
    @Nullable LocalDate dioestrusOn,
    @Nullable LocalDate whelpedOn,
    @Nullable Integer litterSize,
    @Nullable Boolean pregnant) {

  /** A season of which only first blood and perhaps ovulation are known. */
  public EarlierCycle(LocalDate firstBloodOn, @Nullable LocalDate ovulatedOn) {
    this(firstBloodOn, ovulatedOn, null, null, null, null);
  }
}
