package io.github.tiderule.engine.timeline;

import io.github.tiderule.rules.fact.Certainty;
import io.github.tiderule.rules.fact.EarlierCycle;
import io.github.tiderule.rules.parameter.Parameters;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Where the LH peak lies before any test: weak evidence from the day of first blood, and from her
 * own earlier seasons.
 *
 * <p>Days x from first blood to the LH peak: {@code ln(x + shift)} is normal, with a small share of
 * a wider normal for the long tail. Her own seasons move the mean by the normal-normal rule, with
 * the spread between bitches as prior and the spread within a bitch as error; the share of the long
 * tail stays.
 */
final class OnsetPrior {

  private final double earliest;
  private final double latest;
  private final double shift;
  private final double usual;
  private final double spread;
  private final double estimatedSpread;
  private final double doubtfulSpread;
  private final double wideSpread;
  private final double wideWeight;
  private final double between;
  private final double within;
  private final double unknownBefore;
  private final double unknownLongBefore;
  private final double unknownAfter;
  private final double unknownLongWeight;
  private final double lag;
  private final double dioestrusLag;
  private final double dioestrusSpread;
  private final double pregnancy;
  private final double pregnancySpread;

  OnsetPrior(Parameters parameters) {
    earliest = parameters.value("timeline.onset.earliest");
    latest = parameters.value("timeline.onset.latest");
    shift = parameters.value("timeline.onset.shift");
    usual = Math.log(parameters.value("timeline.onset.median") + shift);
    spread = parameters.value("timeline.onset.log-sd");
    estimatedSpread = parameters.value("timeline.onset.estimated-log-sd");
    doubtfulSpread = parameters.value("timeline.onset.doubtful-log-sd");
    wideSpread = parameters.value("timeline.onset.wide-log-sd");
    wideWeight = parameters.value("timeline.onset.wide-weight");
    between = sq(parameters.value("timeline.onset.between-bitch-log-sd"));
    within = sq(parameters.value("timeline.onset.within-bitch-log-sd"));
    unknownBefore = parameters.value("timeline.onset.unknown-before");
    unknownLongBefore = parameters.value("timeline.onset.unknown-long-before");
    unknownAfter = parameters.value("timeline.onset.unknown-after");
    unknownLongWeight = parameters.value("timeline.onset.unknown-long-weight");
    lag = parameters.value("timeline.lag.mean");
    dioestrusLag = parameters.value("timeline.smear.dioestrus-lag");
    dioestrusSpread = parameters.value("timeline.smear.dioestrus-sd");
    pregnancy = parameters.value("whelping.after-ovulation");
    pregnancySpread = parameters.value("whelping.sd");
  }

  /** The span the LH peak can lie in, days after the anchor. */
  double[] span(Evidence evidence) {
    Double first = evidence.firstBloodDay();
    if (first != null) {
      return new double[] {first + earliest, first + latest};
    }
    return new double[] {
      earliestObservation(evidence) - unknownLongBefore - 3, evidence.now() + unknownAfter + 3
    };
  }

  private static double earliestObservation(Evidence evidence) {
    return evidence.times().stream().mapToDouble(Double::doubleValue).min().orElse(evidence.now());
  }

  /** Density per day on a lattice, normalised over all times the LH peak can lie at. */
  double[] on(Lattice lattice, Evidence evidence) {
    double[] span = span(evidence);
    Lattice whole = Lattice.covering(span[0], span[1], lattice.step());
    double sum = 0;
    for (double one : unnormalised(whole, span, evidence)) {
      sum += one;
    }
    double[] density = unnormalised(lattice, span, evidence);
    for (int i = 0; i < density.length; i++) {
      density[i] /= sum * lattice.step();
    }
    return density;
  }

  /**
   * How much likelier an LH peak is once a rest of so many days has put it off: half of such rests
   * put the surge off by their length, half fall into the time before it. Where first blood is
   * unknown nothing is put off.
   *
   * @return by place of the lattice
   */
  double[] putOff(Lattice peaks, double days, Evidence evidence) {
    double[] ratio = new double[peaks.count()];
    Double first = evidence.firstBloodDay();
    if (first == null) {
      Arrays.fill(ratio, 1);
      return ratio;
    }
    double[] here = since(first, peaks, evidence);
    double[] before = since(first + days, peaks, evidence);
    for (int i = 0; i < ratio.length; i++) {
      boolean inside = peaks.at(i) - days > first + earliest;
      ratio[i] = 0.5 + (inside && here[i] > 0 ? 0.5 * before[i] / here[i] : 0);
    }
    return ratio;
  }

  private double[] unnormalised(Lattice lattice, double[] span, Evidence evidence) {
    Double first = evidence.firstBloodDay();
    double[] density = first != null ? since(first, lattice, evidence) : unknown(lattice, evidence);
    for (int i = 0; i < density.length; i++) {
      // each end of the span is spread over one step, so that a trapezoid sum sees it rightly
      double inside = Math.min(lattice.at(i) - span[0], span[1] - lattice.at(i));
      density[i] *= Math.min(Math.max(inside / lattice.step() + 0.5, 0), 1);
    }
    return density;
  }

  private double[] since(double first, Lattice lattice, Evidence evidence) {
    double sd = spread(evidence.firstBlood().certainty());
    double wideSd = Math.max(wideSpread, sd);
    double mean = usual;
    double[] own = own(evidence.earlierCycles());
    List<Counted> counted = counted(evidence.earlierCycles());
    if (own.length > 0 || !counted.isEmpty()) {
      double extra = sd * sd - spread * spread;
      double precision = 1 / between + own.length / within;
      double sum = usual / between + Arrays.stream(own).sum() / within;
      for (Counted season : counted) {
        precision += 1 / (within + season.variance());
        sum += season.log() / (within + season.variance());
      }
      mean = sum / precision;
      sd = Math.sqrt(1 / precision + within + extra);
    }
    double[] density = new double[lattice.count()];
    for (int i = 0; i < density.length; i++) {
      double shifted = lattice.at(i) - first + shift;
      if (shifted > 0) {
        double log = Math.log(shifted);
        density[i] =
            ((1 - wideWeight) * Normal.density((log - mean) / sd) / sd
                    + wideWeight * Normal.density((log - usual) / wideSd) / wideSd)
                / shifted;
      }
    }
    return density;
  }

  private double spread(Certainty certainty) {
    return switch (certainty) {
      case SEEN -> spread;
      case ESTIMATED -> estimatedSpread;
      case UNKNOWN -> doubtfulSpread;
    };
  }

  /** Her own shifted log days to the LH peak, from seasons in which both days are known. */
  private double[] own(List<EarlierCycle> cycles) {
    return cycles.stream()
        .filter(cycle -> cycle.ovulatedOn() != null)
        .mapToDouble(cycle -> days(cycle.firstBloodOn(), cycle.ovulatedOn()) - lag)
        .filter(days -> days > earliest + 1 && days < latest)
        .map(days -> Math.log(days + shift))
        .toArray();
  }

  /**
   * A season of hers whose ovulation is counted back.
   *
   * @param log shifted log days to the LH peak
   * @param variance of that, from the counting alone
   */
  private record Counted(double log, double variance) {}

  /** Seasons whose ovulation is counted back from the shift of the smear, or else from whelping. */
  private List<Counted> counted(List<EarlierCycle> cycles) {
    List<Counted> counted = new ArrayList<>();
    for (EarlierCycle cycle : cycles) {
      LocalDate shifted = cycle.dioestrusOn();
      LocalDate whelped = cycle.whelpedOn();
      boolean byShift = shifted != null;
      LocalDate from = byShift ? shifted : whelped;
      if (cycle.ovulatedOn() != null || from == null) {
        continue;
      }
      double back = byShift ? dioestrusLag : pregnancy;
      double days = days(cycle.firstBloodOn(), from) - back - lag;
      if (days > earliest + 1 && days < latest) {
        double error = (byShift ? dioestrusSpread : pregnancySpread) / (days + shift);
        counted.add(new Counted(Math.log(days + shift), sq(error)));
      }
    }
    return counted;
  }

  private static double days(LocalDate from, LocalDate to) {
    return ChronoUnit.DAYS.between(from, to);
  }

  private double[] unknown(Lattice lattice, Evidence evidence) {
    double observed = earliestObservation(evidence);
    double near = observed - unknownBefore;
    double far = observed - unknownLongBefore;
    double last = evidence.now() + unknownAfter;
    double[] density = new double[lattice.count()];
    for (int i = 0; i < density.length; i++) {
      double at = lattice.at(i);
      density[i] =
          (1 - unknownLongWeight) * flat(at, near, last) + unknownLongWeight * flat(at, far, near);
    }
    return density;
  }

  /** A flat density between two times, with edges softened over a day. */
  private static double flat(double at, double from, double to) {
    return (Normal.cdf(at - from) - Normal.cdf(at - to)) / (to - from);
  }

  private static double sq(double x) {
    return x * x;
  }
}
