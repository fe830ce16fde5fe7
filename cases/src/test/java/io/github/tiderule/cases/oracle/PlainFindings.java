package io.github.tiderule.cases.oracle;

import io.github.tiderule.rules.conclusion.reading.Level;
import io.github.tiderule.rules.conclusion.reading.LevelKind;
import io.github.tiderule.rules.fact.observation.Folds;
import io.github.tiderule.rules.fact.observation.LhTest;
import io.github.tiderule.rules.fact.observation.Neutrophils;
import io.github.tiderule.rules.fact.observation.Smear;
import io.github.tiderule.rules.fact.observation.Vaginoscopy;
import io.github.tiderule.rules.parameter.Parameters;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import java.util.List;

/** What the rules of the findings ought to say of a season. */
final class PlainFindings {

  private final DrawnSeason season;
  private final Parameters parameters;
  private final Says says;

  PlainFindings(DrawnSeason season, Parameters parameters, Says says) {
    this.season = season;
    this.parameters = parameters;
    this.says = says;
  }

  void reckon() {
    progesterone();
    otherFindings();
  }

  private double value(String id) {
    return parameters.value(id);
  }

  private void say(String rule, Object... about) {
    says.say(rule, about);
  }

  private static double hours(Instant from, Instant to) {
    return ChronoUnit.SECONDS.between(from, to) / 3600.0;
  }

  private static double lowest(Level level) {
    return level.low() / level.referenceFactor();
  }

  private static double highest(Level level) {
    return level.high() / level.referenceFactor();
  }

  private static boolean hasLowEnd(Level level) {
    return level.kind() == LevelKind.VALUE || level.kind() == LevelKind.ABOVE;
  }

  private static boolean hasHighEnd(Level level) {
    return level.kind() == LevelKind.VALUE || level.kind() == LevelKind.BELOW;
  }

  private void progesterone() {
    for (String rule : List.of("FND-001", "FND-002", "FND-007", "FND-010", "FND-020", "FND-030")) {
      say(rule);
    }
    if (season.levels.isEmpty()) {
      say("FND-001", List.of());
    }
    for (String laboratory : List.of("A", "B")) {
      List<Level> line =
          season.levels.stream()
              .filter(level -> level.series().laboratory().equals(laboratory))
              .sorted(Comparator.comparing(Level::at))
              .toList();
      if (!line.isEmpty()) {
        ends(line);
        steps(line);
        pairs(line);
      }
    }
  }

  /** What the first and the last value of a line say. */
  private void ends(List<Level> line) {
    double floor = value("findings.rise.floor");
    Level last = line.get(line.size() - 1);
    boolean leftBefore =
        line.stream().anyMatch(l -> !l.equals(last) && lowest(l) >= value("findings.base.left"));
    if (highest(last) < floor && !leftBefore) {
      say("FND-002", List.of(last.observation()));
    }
    if (line.size() == 1 && highest(last) < floor) {
      say("FND-007", List.of());
    }
  }

  /** What one value and the very next say. */
  private void steps(List<Level> line) {
    double crossing = value("findings.ovulation.level");
    for (int i = 0; i + 1 < line.size(); i++) {
      Level a = line.get(i);
      Level b = line.get(i + 1);
      boolean risenBefore = line.subList(0, i).stream().anyMatch(l -> lowest(l) >= crossing);
      if (hasHighEnd(a)
          && highest(a) < crossing
          && hasLowEnd(b)
          && lowest(b) >= crossing
          && !risenBefore) {
        say("FND-010", List.of(a.observation(), b.observation()));
      }
      double gap = hours(a.at(), b.at());
      if (a.kind() == LevelKind.VALUE
          && b.kind() == LevelKind.VALUE
          && lowest(a) >= value("findings.fast.floor")
          && gap >= value("findings.pace.least-hours")
          && Math.exp(Math.log(b.low() / a.low()) * 24 / gap) > value("findings.fast.per-day")) {
        say("FND-020", List.of(a.observation(), b.observation()));
      }
    }
  }

  /** What two values of a line say, whatever lies between. */
  private void pairs(List<Level> line) {
    for (int i = 0; i < line.size(); i++) {
      Level a = line.get(i);
      for (Level b : line.subList(i + 1, line.size())) {
        double kept = b.low() / a.low();
        if (a.kind() == LevelKind.VALUE
            && b.kind() == LevelKind.VALUE
            && hours(a.at(), b.at()) <= value("findings.swing.hours")
            && kept <= 1 - value("findings.swing.least")
            && kept >= 1 - value("findings.swing.most")) {
          say("FND-030", List.of(a.observation(), b.observation()));
        }
      }
    }
  }

  private void otherFindings() {
    for (String rule : List.of("FND-043", "FND-050", "FND-051", "FND-055", "FND-060")) {
      say(rule);
    }
    for (LhTest test : season.lhTests) {
      boolean alone =
          season.lhTests.stream()
              .filter(other -> !other.equals(test))
              .allMatch(
                  other -> Math.abs(hours(test.at(), other.at())) > value("findings.lh.gap-hours"));
      if (!test.positive() && alone) {
        say("FND-043", List.of(test.id()));
      }
    }
    double full = value("findings.smear.full");
    List<Smear> counted =
        season.smears.stream().filter(smear -> smear.cornifiedPercent() != null).toList();
    Instant lastCounted = counted.stream().map(Smear::at).max(Instant::compareTo).orElse(null);
    Instant last = season.smears.stream().map(Smear::at).max(Instant::compareTo).orElse(null);
    boolean everFull = counted.stream().anyMatch(smear -> percent(smear) >= full);
    for (Smear smear : counted) {
      if (!everFull && smear.at().equals(lastCounted)) {
        say("FND-050", List.of(smear.id()));
      }
      boolean clean = smear.neutrophils() == null || smear.neutrophils() == Neutrophils.NONE;
      if (percent(smear) >= full && clean && smear.at().equals(last)) {
        say("FND-051", List.of(smear.id()));
      }
      if (counted.size() == 1) {
        say("FND-055", List.of(smear.id()));
      }
    }
    Instant lastLook =
        season.folds.stream().map(Vaginoscopy::at).max(Instant::compareTo).orElse(null);
    season.folds.stream()
        .filter(look -> look.folds() == Folds.ANGULAR && look.at().equals(lastLook))
        .forEach(look -> say("FND-060", List.of(look.id())));
  }

  private static double percent(Smear smear) {
    Double percent = smear.cornifiedPercent();
    return percent == null ? Double.NaN : percent;
  }
}
