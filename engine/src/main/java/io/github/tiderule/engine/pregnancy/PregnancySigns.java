package io.github.tiderule.engine.pregnancy;

import io.github.tiderule.engine.season.Dated;
import io.github.tiderule.engine.season.Read;
import io.github.tiderule.engine.timeline.TimeAxis;
import io.github.tiderule.engine.timeline.Turning;
import io.github.tiderule.engine.whelping.LateProgesterone;
import io.github.tiderule.engine.whelping.WhelpingEvidence;
import io.github.tiderule.engine.whelping.WhelpingEvidence.Drawn;
import io.github.tiderule.engine.whelping.WhelpingEvidence.Measured;
import io.github.tiderule.engine.whelping.WhelpingEvidence.Part;
import io.github.tiderule.engine.whelping.WhelpingEvidence.Temperature;
import io.github.tiderule.rules.conclusion.reading.Level;
import io.github.tiderule.rules.conclusion.reading.LevelKind;
import io.github.tiderule.rules.fact.assay.Method;
import io.github.tiderule.rules.fact.observation.BodyTemperature;
import io.github.tiderule.rules.fact.observation.BreedingDone;
import io.github.tiderule.rules.fact.observation.Observation;
import io.github.tiderule.rules.fact.observation.PregnancyScan;
import io.github.tiderule.rules.fact.observation.Radiograph;
import io.github.tiderule.rules.fact.observation.Sign;
import io.github.tiderule.rules.fact.observation.SignKind;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Turns what was seen in pregnancy into the numbers that whelping is reasoned from. */
final class PregnancySigns {

  private final TimeAxis axis;
  private final List<Measured> measured = new ArrayList<>();
  private final List<Temperature> temperatures = new ArrayList<>();
  private @Nullable Double firstBreeding;
  private @Nullable Integer scanned;
  private @Nullable Integer counted;
  private double stillPregnant = Double.NEGATIVE_INFINITY;
  private double firstPup = Double.POSITIVE_INFINITY;

  private PregnancySigns(TimeAxis axis) {
    this.axis = axis;
  }

  /** Of the accepted observations of a season. */
  static WhelpingEvidence of(Dated dated, @Nullable Turning turning) {
    Read read = dated.read();
    TimeAxis axis = dated.season().axis();
    PregnancySigns signs = new PregnancySigns(axis);
    read.accepted().forEach(signs::add);
    List<Drawn> drawn =
        read.levels().stream()
            .sorted(Comparator.comparing(Level::at).thenComparing(Level::observation))
            .map(level -> drawn(axis.day(level.at()), level))
            .toList();
    double last = drawn.isEmpty() ? Double.NEGATIVE_INFINITY : drawn.get(drawn.size() - 1).day();
    return new WhelpingEvidence(
        dated.density(),
        turning,
        signs.firstBreeding,
        dated.season().female().bodyMassKg(),
        dated.season().female().breed(),
        signs.counted != null ? signs.counted : signs.scanned,
        signs.measured,
        signs.temperatures,
        drawn,
        Math.min(Math.max(signs.stillPregnant, last), signs.firstPup),
        signs.firstPup,
        Double.isInfinite(signs.firstPup)
            ? axis.day(dated.season().asOf())
            : Double.NEGATIVE_INFINITY);
  }

  /** A band of a kit is of no method, and stands on the scale of radioimmunoassay. */
  private static Drawn drawn(double day, Level level) {
    Method method = level.series().method();
    return level.kind() != LevelKind.BAND && LateProgesterone.hasOwn(method)
        ? new Drawn(day, method, level.low(), level.high())
        : new Drawn(day, Method.UNKNOWN, level.referenceLow(), level.referenceHigh());
  }

  private void add(Observation observation) {
    double day = axis.day(observation.at());
    if (observation instanceof BreedingDone) {
      firstBreeding = firstBreeding == null ? day : Math.min(firstBreeding, day);
    } else if (observation instanceof PregnancyScan scan) {
      add(scan, day);
    } else if (observation instanceof Radiograph radiograph && radiograph.shown()) {
      counted = radiograph.fetuses() == null ? counted : radiograph.fetuses();
      stillPregnant = Math.max(stillPregnant, day);
    } else if (observation instanceof BodyTemperature reading) {
      temperatures.add(new Temperature(day, reading.celsius()));
      stillPregnant = Math.max(stillPregnant, day);
    } else if (observation instanceof Sign sign && sign.present()) {
      if (sign.sign() == SignKind.PUP_BORN) {
        firstPup = Math.min(firstPup, day);
      } else if (sign.sign() == SignKind.STRAINING || sign.sign() == SignKind.WATERS_BROKEN) {
        stillPregnant = Math.max(stillPregnant, day);
      }
    }
  }

  private void add(PregnancyScan scan, double day) {
    if (!scan.shown()) {
      return;
    }
    scanned = scan.fetuses() == null ? scanned : scan.fetuses();
    stillPregnant = Math.max(stillPregnant, day);
    mean(scan.innerChorionicCavityMm(), Part.CAVITY, day);
    mean(scan.biparietalMm(), Part.SKULL, day);
  }

  private void mean(List<Double> millimetres, Part part, double day) {
    millimetres.stream()
        .mapToDouble(Double::doubleValue)
        .average()
        .ifPresent(mean -> measured.add(new Measured(day, part, mean)));
  }
}
