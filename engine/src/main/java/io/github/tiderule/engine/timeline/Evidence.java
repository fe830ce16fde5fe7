package io.github.tiderule.engine.timeline;

import io.github.tiderule.rules.fact.Certainty;
import io.github.tiderule.rules.fact.EarlierCycle;
import io.github.tiderule.rules.fact.FirstBlood;
import io.github.tiderule.rules.fact.assay.Series;
import io.github.tiderule.rules.fact.observation.Folds;
import io.github.tiderule.rules.fact.observation.Neutrophils;
import io.github.tiderule.rules.fact.observation.SignKind;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What the timeline reasons from. Times are days after an anchor that is a midnight in UTC.
 *
 * @param firstBloodDay local noon of the first blood, or absent
 * @param now the moment of the advice
 */
public record Evidence(
    FirstBlood firstBlood,
    @Nullable Double firstBloodDay,
    double now,
    List<EarlierCycle> earlierCycles,
    List<Value> values,
    List<Interval> intervals,
    List<Lh> lhTests,
    List<SmearSeen> smears,
    List<FoldsSeen> folds,
    List<SignSeen> signs,
    List<Scan> scans) {

  /** No evidence at all. */
  static final Evidence NOTHING =
      new Evidence(
          new FirstBlood(null, Certainty.UNKNOWN),
          null,
          0,
          List.of(),
          List.of(),
          List.of(),
          List.of(),
          List.of(),
          List.of(),
          List.of(),
          List.of());

  /** Whether anything dates this season at all. */
  public boolean saysSomething() {
    return firstBloodDay != null || !times().isEmpty();
  }

  /** Times of all observations. */
  public List<Double> times() {
    return items().stream().map(Item::day).toList();
  }

  /** All observations, progesterone first. */
  public List<Item> items() {
    return java.util.stream.Stream.<List<? extends Item>>of(
            values, intervals, lhTests, smears, folds, signs, scans)
        .<Item>flatMap(List::stream)
        .toList();
  }

  /** An observation with its id and time. */
  public sealed interface Item {
    String id();

    double day();
  }

  /**
   * A progesterone number, ng/mL on its method's scale.
   *
   * @param readsLow whether the sample's handling makes it read low
   * @param noisy whether it is trusted less for another reason
   */
  public record Value(
      String id, double day, double ngPerMl, Series series, boolean readsLow, boolean noisy)
      implements Item {}

  /**
   * A progesterone result known only to lie between two values, ng/mL.
   *
   * @param high may be infinite
   * @param kit whether it is a band of a semi-quantitative kit
   */
  public record Interval(
      String id,
      double day,
      double low,
      double high,
      Series series,
      boolean readsLow,
      boolean noisy,
      boolean kit)
      implements Item {}

  /** An LH test. */
  public record Lh(String id, double day, boolean positive) implements Item {}

  /** A smear. */
  public record SmearSeen(
      String id, double day, @Nullable Double cornifiedPercent, @Nullable Neutrophils neutrophils)
      implements Item {}

  /** A look at the folds. */
  public record FoldsSeen(String id, double day, Folds folds) implements Item {}

  /** A sign, present or looked for in vain. */
  public record SignSeen(String id, double day, SignKind sign, boolean present) implements Item {}

  /** A look at the ovaries. */
  public record Scan(String id, double day, boolean ovulated) implements Item {}

  /** The same without one observation. */
  Evidence without(String id) {
    return new Evidence(
        firstBlood,
        firstBloodDay,
        now,
        earlierCycles,
        rest(values, id),
        rest(intervals, id),
        rest(lhTests, id),
        rest(smears, id),
        rest(folds, id),
        rest(signs, id),
        rest(scans, id));
  }

  /** The same with one number more, in the last place. */
  Evidence with(Value value) {
    return new Evidence(
        firstBlood,
        firstBloodDay,
        now,
        earlierCycles,
        java.util.stream.Stream.concat(values.stream(), java.util.stream.Stream.of(value)).toList(),
        intervals,
        lhTests,
        smears,
        folds,
        signs,
        scans);
  }

  /** The same with nothing but first blood and progesterone. */
  Evidence progesteroneOnly() {
    return new Evidence(
        firstBlood,
        firstBloodDay,
        now,
        earlierCycles,
        values,
        intervals,
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of());
  }

  private static <T extends Item> List<T> rest(List<T> all, String id) {
    return all.stream().filter(item -> !item.id().equals(id)).toList();
  }
}
