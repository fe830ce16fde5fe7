package io.github.tiderule.engine.timeline;

import io.github.tiderule.rules.fact.Certainty;
import io.github.tiderule.rules.fact.FirstBlood;
import io.github.tiderule.rules.fact.assay.Series;
import io.github.tiderule.rules.fact.observation.Neutrophils;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A season written down in a line: first blood on day 0, then what a test names. */
final class PlainEvidence {

  private final List<Evidence.Value> values = new ArrayList<>();
  private final List<Evidence.Interval> intervals = new ArrayList<>();
  private final List<Evidence.Lh> lhTests = new ArrayList<>();
  private final List<Evidence.SmearSeen> smears = new ArrayList<>();
  private final List<Evidence.Scan> scans = new ArrayList<>();

  PlainEvidence value(Series series, double day, double ngPerMl) {
    values.add(new Evidence.Value("v" + values.size(), day, ngPerMl, series, false, false));
    return this;
  }

  PlainEvidence below(Series series, double day, double ngPerMl) {
    intervals.add(
        new Evidence.Interval(
            "i" + intervals.size(), day, 0, ngPerMl, series, false, false, false));
    return this;
  }

  PlainEvidence lh(double day, boolean positive) {
    lhTests.add(new Evidence.Lh("l" + lhTests.size(), day, positive));
    return this;
  }

  PlainEvidence smear(
      double day, @Nullable Double cornifiedPercent, @Nullable Neutrophils neutrophils) {
    smears.add(new Evidence.SmearSeen("c" + smears.size(), day, cornifiedPercent, neutrophils));
    return this;
  }

  PlainEvidence scan(double day, boolean ovulated) {
    scans.add(new Evidence.Scan("u" + scans.size(), day, ovulated));
    return this;
  }

  Evidence evidence() {
    return new Evidence(
        new FirstBlood(LocalDate.of(2027, 3, 1), Certainty.SEEN),
        0.5,
        14,
        List.of(),
        List.copyOf(values),
        List.copyOf(intervals),
        List.copyOf(lhTests),
        List.copyOf(smears),
        List.of(),
        List.of(),
        List.copyOf(scans));
  }
}
