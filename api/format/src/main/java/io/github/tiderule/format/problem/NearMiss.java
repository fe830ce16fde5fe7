package io.github.tiderule.format.problem;

import java.util.Collection;
import java.util.Locale;
import java.util.Optional;

/** Finds the word that was probably meant. */
public final class NearMiss {

  /** Words longer than this are nobody's slip. */
  private static final int LONGEST = 64;

  private NearMiss() {}

  /**
   * The candidate nearest to a word: at most two slips away, and at most a third of its letters. Of
   * equally near ones, the first in the order of the candidates.
   */
  public static Optional<String> of(String word, Collection<String> candidates) {
    if (word.isEmpty() || word.length() > LONGEST) {
      return Optional.empty();
    }
    String plain = plain(word);
    Optional<String> best = Optional.empty();
    int least = Integer.MAX_VALUE;
    for (String candidate : candidates) {
      int limit = Math.min(2, candidate.length() / 3);
      int slips = slips(plain, plain(candidate));
      if (slips <= limit && slips < least) {
        least = slips;
        best = Optional.of(candidate);
      }
    }
    return best;
  }

  private static String plain(String word) {
    return word.strip().toLowerCase(Locale.ROOT).replace('_', '-').replace(' ', '-');
  }

  /** Letters to add, drop, change or swap with their neighbour to turn one word into the other. */
  static int slips(String from, String to) {
    int[][] cost = new int[from.length() + 1][to.length() + 1];
    for (int i = 0; i <= from.length(); i++) {
      for (int j = 0; j <= to.length(); j++) {
        cost[i][j] = i == 0 ? j : j == 0 ? i : cheapest(cost, from, to, i, j);
      }
    }
    return cost[from.length()][to.length()];
  }

  private static int cheapest(int[][] cost, String from, String to, int i, int j) {
    int change = from.charAt(i - 1) == to.charAt(j - 1) ? 0 : 1;
    int least = Math.min(cost[i - 1][j - 1] + change, Math.min(cost[i - 1][j], cost[i][j - 1]) + 1);
    boolean swapped =
        i > 1
            && j > 1
            && from.charAt(i - 1) == to.charAt(j - 2)
            && from.charAt(i - 2) == to.charAt(j - 1);
    return swapped ? Math.min(least, cost[i - 2][j - 2] + 1) : least;
  }
}
