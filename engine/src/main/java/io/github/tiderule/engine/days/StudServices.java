package io.github.tiderule.engine.days;

import io.github.tiderule.engine.advice.StudPlan;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Set;

/**
 * Shares the services of one stud among several females so that the sum of their expected egg
 * shares is largest.
 *
 * <p>Each service goes to one female or to none; a female may have several. For each female the
 * share of every set of services is computed once; then the best division is built up female by
 * female over the sets that are left, which looks at every division there is. A service is given
 * only where it adds a least share, so that a stud is not used for nothing. Equal sums go to the
 * division that gives earlier services to females named earlier.
 */
public final class StudServices {

  /** Most services of one search: the work grows threefold with each. */
  private static final int MOST = StudPlan.MOST_SERVICES;

  /** How far the middle of a window may lie from the service it is about. */
  private static final Duration NEAR = Duration.ofMinutes(20);

  private static final double TIE = 1e-9;

  private final List<Instant> services;
  private final List<Candidate> candidates;
  private final double worth;
  private final double[][] share;

  /**
   * A female who waits for the stud.
   *
   * @param id her name, unlike that of any other
   * @param table her days, made of short windows about the services; a service without one is none
   *     of hers
   * @param forbidden days that a rule vetoes
   */
  public record Candidate(String id, DayTable table, Set<LocalDate> forbidden) {

    public Candidate {
      forbidden = Set.copyOf(forbidden);
    }
  }

  private StudServices(List<Instant> services, List<Candidate> candidates, double worth) {
    this.services = services;
    this.candidates = candidates;
    this.worth = worth;
    share = new double[candidates.size()][];
    for (int f = 0; f < share.length; f++) {
      share[f] = shares(candidates.get(f));
    }
  }

  /**
   * The best division.
   *
   * @param services in time order, at most {@value #MOST}
   * @param worth egg share that a service must add, 0–1
   * @throws IllegalArgumentException if there are more services than can be searched, or they are
   *     out of order
   */
  public static StudPlan divide(List<Instant> services, List<Candidate> candidates, double worth) {
    if (services.size() > MOST) {
      throw new IllegalArgumentException(services.size() + " services, more than " + MOST);
    }
    for (int i = 1; i < services.size(); i++) {
      if (!services.get(i).isAfter(services.get(i - 1))) {
        throw new IllegalArgumentException("services out of order");
      }
    }
    return new StudServices(List.copyOf(services), List.copyOf(candidates), worth).divide();
  }

  /** Egg share of a female for every set of services; a set is the bits of its index. */
  private double[] shares(Candidate candidate) {
    DayTable table = candidate.table();
    EggShares eggs = table.shares();
    int[] slotOf = new int[services.size()];
    Arrays.fill(slotOf, -1);
    for (int i = 0; i < slotOf.length; i++) {
      for (int s = 0; s < table.slots().size(); s++) {
        Slot slot = table.slots().get(s);
        Duration off = Duration.between(services.get(i), slot.middle()).abs();
        if (off.compareTo(NEAR) <= 0 && !candidate.forbidden().contains(slot.day())) {
          slotOf[i] = s;
        }
      }
    }
    double[][] misses = new double[1 << slotOf.length][];
    double[] shares = new double[misses.length];
    misses[0] = eggs.start();
    shares[0] = eggs.mean(misses[0]);
    for (int set = 1; set < misses.length; set++) {
      int last = 31 - Integer.numberOfLeadingZeros(set);
      int before = set & ~(1 << last);
      if (slotOf[last] < 0) {
        misses[set] = misses[before];
      } else {
        misses[set] = eggs.vector();
        eggs.and(misses[before], slotOf[last], misses[set]);
      }
      shares[set] = eggs.mean(misses[set]);
    }
    return shares;
  }

  private StudPlan divide() {
    int sets = 1 << services.size();
    // best[f][free]: most that females from f on can get out of the free services
    double[][] best = new double[candidates.size() + 1][sets];
    int[][] taken = new int[candidates.size()][sets];
    for (int f = candidates.size() - 1; f >= 0; f--) {
      for (int free = 0; free < sets; free++) {
        double most = Double.NEGATIVE_INFINITY;
        for (int set = free; ; set = (set - 1) & free) {
          double value = share[f][set] - worth * Integer.bitCount(set) + best[f + 1][free & ~set];
          if (value > most + TIE || (value > most - TIE && earlier(set, taken[f][free]))) {
            most = Math.max(value, most);
            taken[f][free] = set;
          }
          if (set == 0) {
            break;
          }
        }
        best[f][free] = most;
      }
    }
    int free = sets - 1;
    int[] given = new int[candidates.size()];
    for (int f = 0; f < given.length; f++) {
      given[f] = taken[f][free];
      free &= ~given[f];
    }
    return plan(given);
  }

  /** Whether a set begins earlier, or as early with fewer services. */
  private static boolean earlier(int set, int than) {
    int first = Integer.numberOfTrailingZeros(set);
    int other = Integer.numberOfTrailingZeros(than);
    return first < other || (first == other && Integer.bitCount(set) < Integer.bitCount(than));
  }

  private StudPlan plan(int[] given) {
    List<StudPlan.Service> plan = new ArrayList<>();
    for (int i = 0; i < services.size(); i++) {
      String to = null;
      double adds = 0;
      for (int f = 0; f < given.length; f++) {
        if ((given[f] >> i & 1) == 1) {
          to = candidates.get(f).id();
          adds = share[f][given[f]] - share[f][given[f] & ~(1 << i)];
        }
      }
      plan.add(new StudPlan.Service(services.get(i), to, adds));
    }
    List<StudPlan.Part> parts = new ArrayList<>();
    for (int f = 0; f < given.length; f++) {
      parts.add(part(f, given[f]));
    }
    parts.sort(
        Comparator.comparingDouble((StudPlan.Part part) -> -part.lostByWaiting())
            .thenComparing(StudPlan.Part::female));
    double total = parts.stream().mapToDouble(StudPlan.Part::share).sum();
    return new StudPlan(plan, parts, List.of(), total);
  }

  private StudPlan.Part part(int f, int set) {
    List<Instant> at = new ArrayList<>();
    List<Double> alone = new ArrayList<>();
    double best = share[f][0];
    double later = share[f][0];
    for (int i = 0; i < services.size(); i++) {
      if ((set >> i & 1) == 1) {
        at.add(services.get(i));
      }
      double one = share[f][1 << i];
      alone.add(one);
      best = Math.max(best, one);
      later = i == 0 ? later : Math.max(later, one);
    }
    return new StudPlan.Part(candidates.get(f).id(), at, share[f][set], alone, best - later);
  }
}
