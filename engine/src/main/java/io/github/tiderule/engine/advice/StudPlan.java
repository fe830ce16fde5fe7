package io.github.tiderule.engine.advice;

import io.github.tiderule.rules.sentence.Sentence;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * How the services of one stud are shared among several females.
 *
 * @param services in time order
 * @param parts what each female gets, first the one who loses most by waiting
 * @param leftOut females that no day can be named for
 * @param total sum of the females' expected egg shares
 */
public record StudPlan(
    List<Service> services, List<Part> parts, List<LeftOut> leftOut, double total) {

  /** So many services are shared at most. */
  public static final int MOST_SERVICES = 12;

  public StudPlan {
    services = List.copyOf(services);
    parts = List.copyOf(parts);
    leftOut = List.copyOf(leftOut);
  }

  /** A female that no day can be named for, and what is to be done about her instead. */
  public record LeftOut(String female, Sentence instead) {}

  /**
   * A service.
   *
   * @param female who is given it; absent where it would add too little to any of them
   * @param adds egg share she would miss without it, the others she has being given
   */
  public record Service(Instant at, @Nullable String female, double adds) {}

  /**
   * What a female gets.
   *
   * @param at her services, in time order; none where others need them more
   * @param share expected share of her eggs met, with breedings already done
   * @param alone share for each service, were it her only one, in the order of the services
   * @param lostByWaiting egg share lost if the first service went to another: that of her best
   *     service less that of her best one after the first. The less slack, the more is lost
   */
  public record Part(
      String female, List<Instant> at, double share, List<Double> alone, double lostByWaiting) {

    public Part {
      at = List.copyOf(at);
      alone = List.copyOf(alone);
    }
  }
}
