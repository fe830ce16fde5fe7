package io.github.tiderule.api.page.reasoning;

import io.github.tiderule.api.report.text.Shares;
import io.github.tiderule.api.words.Words;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.course.DayProbability;
import io.github.tiderule.engine.advice.course.Ovulation;
import io.github.tiderule.engine.advice.course.Quantiles;
import java.time.OffsetDateTime;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The numbers of the timeline.
 *
 * @param peak when LH peaks; absent where nothing can be said
 * @param ovulation when she ovulates
 * @param proven whether a proof of ovulation is among the findings
 * @param ordinary chance of an ordinary course, in 100
 * @param plateau chance that progesterone rests at a raised level before the surge, in 100
 * @param none chance that she does not ovulate this time, in 100
 */
public record Estimate(
    @Nullable Span peak,
    Span ovulation,
    boolean proven,
    String ordinary,
    String plateau,
    String none,
    List<Likely> byDay) {

  private static final double WORTH_TELLING = 0.005;

  /** Quantiles in words. */
  public record Span(String p05, String p25, String median, String p75, String p95) {}

  /**
   * How likely ovulation is on a day.
   *
   * @param inHundred in words
   * @param part length of its bar, 0 to 100
   */
  public record Likely(String day, String inHundred, long part) {}

  /** The numbers of an advice; absent where nothing can be said. */
  static @Nullable Estimate of(Advice advice, Words words) {
    Ovulation ovulation = advice.timing().ovulation();
    if (ovulation == null) {
      return null;
    }
    Quantiles peak = advice.timing().lhPeak();
    return new Estimate(
        peak == null
            ? null
            : span(words, peak.p05(), peak.p25(), peak.median(), peak.p75(), peak.p95()),
        span(
            words,
            ovulation.p05(),
            ovulation.p25(),
            ovulation.median(),
            ovulation.p75(),
            ovulation.p95()),
        ovulation.confirmed(),
        Shares.number(ovulation.patterns().ordinary()),
        Shares.number(ovulation.patterns().plateau()),
        Shares.number(ovulation.patterns().noOvulation()),
        ovulation.byDay().stream()
            .filter(day -> day.probability() >= WORTH_TELLING)
            .map(day -> likely(day, words))
            .toList());
  }

  private static Likely likely(DayProbability day, Words words) {
    return new Likely(
        words.shortDay(day.day()),
        Shares.number(day.probability()),
        Math.round(100 * day.probability()));
  }

  private static Span span(
      Words words,
      OffsetDateTime p05,
      OffsetDateTime p25,
      OffsetDateTime median,
      OffsetDateTime p75,
      OffsetDateTime p95) {
    return new Span(
        words.shortMoment(p05),
        words.shortMoment(p25),
        words.shortMoment(median),
        words.shortMoment(p75),
        words.shortMoment(p95));
  }
}
