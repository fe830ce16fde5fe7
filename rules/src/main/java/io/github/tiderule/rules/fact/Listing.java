package io.github.tiderule.rules.fact;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;

/**
 * Unchangeable copies of the lists a fact is given. A list or an entry that is null stays so: facts
 * refuse nothing, whoever gathers them names all that is missing at once.
 */
public final class Listing {

  private Listing() {}

  /** The entries in the order they came. */
  @SuppressWarnings("NullAway") // what callers without a checker hand in is kept for the check
  public static <E> List<E> of(List<E> entries) {
    return entries == null ? null : Collections.unmodifiableList(new ArrayList<>(entries));
  }

  /** Each entry once, in its natural order. */
  public static <E extends Comparable<? super E>> List<E> sorted(List<E> entries) {
    return sorted(entries, Comparator.naturalOrder());
  }

  /** Each entry once, in a given order. */
  @SuppressWarnings("NullAway") // what callers without a checker hand in is kept for the check
  public static <E> List<E> sorted(List<E> entries, Comparator<? super E> order) {
    return entries == null
        ? null
        : entries.stream().distinct().sorted(Comparator.nullsLast(order)).toList();
  }

  /** A list with one more entry at its end. */
  public static <E> List<E> plus(List<E> entries, E entry) {
    List<E> more = new ArrayList<>(entries);
    more.add(entry);
    return Collections.unmodifiableList(more);
  }
}
