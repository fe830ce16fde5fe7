package io.github.tiderule.api.record.table;

import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * Some of a list.
 *
 * @param next where the next page begins after; absent on the last page
 */
public record Page<T>(List<T> items, @Nullable String next) {

  public Page {
    items = List.copyOf(items);
  }

  /**
   * Which part of a list is wanted.
   *
   * @param after the page begins after this place; empty for the first page
   * @param limit most things on it, at least 1
   */
  public record Wanted(String after, int limit) {

    /**
     * @throws IllegalArgumentException if the limit is below 1
     */
    public Wanted {
      if (!(limit >= 1)) {
        throw new IllegalArgumentException("limit is " + limit);
      }
    }

    /** The first page, as long as pages are as a rule. */
    public static final Wanted FIRST = new Wanted("", 50);

    /** How many to read to know whether more follow. */
    public int toRead() {
      return limit + 1;
    }

    /** A page of what was read, which may be one more than wanted. */
    public <T> Page<T> of(List<T> read, Function<T, String> place) {
      if (read.size() <= limit) {
        return new Page<>(read, null);
      }
      List<T> items = read.subList(0, limit);
      return new Page<>(items, place.apply(items.get(limit - 1)));
    }
  }
}
