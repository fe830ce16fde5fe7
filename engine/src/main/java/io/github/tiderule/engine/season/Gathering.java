package io.github.tiderule.engine.season;

import io.github.tiderule.engine.timeline.Evidence;
import io.github.tiderule.engine.timeline.TimeAxis;
import io.github.tiderule.rules.conclusion.reading.Discounted;
import io.github.tiderule.rules.conclusion.reading.Level;
import io.github.tiderule.rules.conclusion.reading.LevelKind;
import io.github.tiderule.rules.fact.observation.LhTest;
import io.github.tiderule.rules.fact.observation.Observation;
import io.github.tiderule.rules.fact.observation.OvaryFinding;
import io.github.tiderule.rules.fact.observation.OvaryScan;
import io.github.tiderule.rules.fact.observation.Sign;
import io.github.tiderule.rules.fact.observation.Smear;
import io.github.tiderule.rules.fact.observation.Vaginoscopy;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Turns what the rules accepted into the numbers the timeline reasons from. */
final class Gathering {

  private final Season season;
  private final TimeAxis axis;
  private final List<Discounted> discounted;
  private final Set<String> setAside;

  private final List<Evidence.Value> values = new ArrayList<>();
  private final List<Evidence.Interval> intervals = new ArrayList<>();
  private final List<Evidence.Lh> lhTests = new ArrayList<>();
  private final List<Evidence.SmearSeen> smears = new ArrayList<>();
  private final List<Evidence.FoldsSeen> folds = new ArrayList<>();
  private final List<Evidence.SignSeen> signs = new ArrayList<>();
  private final List<Evidence.Scan> scans = new ArrayList<>();

  private Gathering(Read read) {
    this.season = read.season();
    this.axis = season.axis();
    this.discounted = read.discounted();
    this.setAside = read.setAside();
  }

  /** The evidence of a season. */
  static Evidence of(Read read) {
    Gathering gathering = new Gathering(read);
    read.levels().stream()
        .sorted(Comparator.comparing(Level::at).thenComparing(Level::observation))
        .forEach(gathering::add);
    read.accepted().forEach(gathering::add);
    return gathering.evidence();
  }

  private void add(Level level) {
    if (setAside.contains(level.observation())) {
      return;
    }
    double day = axis.day(level.at());
    boolean readsLow = doubted(level, Discounted.Direction.READS_LOW);
    boolean noisy = doubted(level, Discounted.Direction.EITHER);
    if (level.kind() == LevelKind.VALUE) {
      values.add(
          new Evidence.Value(
              level.observation(), day, level.low(), level.series(), readsLow, noisy));
    } else {
      intervals.add(
          new Evidence.Interval(
              level.observation(),
              day,
              level.low(),
              level.high(),
              level.series(),
              readsLow,
              noisy,
              level.kind() == LevelKind.BAND));
    }
  }

  private boolean doubted(Level level, Discounted.Direction direction) {
    return discounted.stream()
        .anyMatch(
            doubt ->
                doubt.direction() == direction && doubt.observation().equals(level.observation()));
  }

  private void add(Observation observation) {
    String id = observation.id();
    if (setAside.contains(id)) {
      return;
    }
    double day = axis.day(observation.at());
    if (observation instanceof LhTest test) {
      lhTests.add(new Evidence.Lh(id, day, test.positive()));
    } else if (observation instanceof Smear smear) {
      smears.add(new Evidence.SmearSeen(id, day, smear.cornifiedPercent(), smear.neutrophils()));
    } else if (observation instanceof Vaginoscopy look) {
      folds.add(new Evidence.FoldsSeen(id, day, look.folds()));
    } else if (observation instanceof Sign sign) {
      addSign(sign, day);
    } else if (observation instanceof OvaryScan scan) {
      scans.add(new Evidence.Scan(id, day, scan.finding() == OvaryFinding.OVULATED));
    }
  }

  private void addSign(Sign sign, double day) {
    switch (sign.sign()) {
      case STANDS, REFUSES, FLAGS, VULVA_SOFTENS ->
          signs.add(new Evidence.SignSeen(sign.id(), day, sign.sign(), sign.present()));
      case BLEEDING_STOPS,
          FOUL_DISCHARGE,
          UNWELL,
          THIRST,
          STRAINING,
          GREEN_DISCHARGE,
          WATERS_BROKEN,
          PUP_BORN,
          COLLAPSE,
          TREMBLING -> {
        // these date nothing
      }
    }
  }

  private Evidence evidence() {
    @Nullable Instant noon = season.firstNoon();
    @Nullable Double first = noon == null ? null : Double.valueOf(axis.day(noon));
    return new Evidence(
        season.firstBlood(),
        first,
        axis.day(season.asOf()),
        // of no other are days since first blood known
        season.earlierCycles().stream().filter(one -> one.kind() == null).toList(),
        values,
        intervals,
        lhTests,
        smears,
        folds,
        signs,
        scans);
  }
}
