package io.github.tiderule.cases.corpus;

import io.github.tiderule.api.report.AdviceReport;
import io.github.tiderule.engine.Tiderule;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.format.cycle.CycleFile;
import io.github.tiderule.format.cycle.Reading;
import io.github.tiderule.rules.parameter.OverlayReader;
import io.github.tiderule.rules.parameter.OverlayReading;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Takes each cycle file through the reader and the engine, once; where a case names a protocol of
 * its own, through an engine with it.
 */
public final class Answers {

  private final Tiderule engine;
  private final Map<Path, Outcome> known = new ConcurrentHashMap<>();

  private Answers(Tiderule engine) {
    this.engine = engine;
  }

  /** Answers of one engine. */
  public static Answers of(Tiderule engine) {
    return new Answers(engine);
  }

  /**
   * What comes of the cycle file in a folder.
   *
   * @throws IllegalArgumentException if its protocol is refused
   */
  public Outcome to(CaseFolder folder) {
    return known.computeIfAbsent(
        folder.path(), path -> outcome(engine(folder.protocol()), folder.cycle()));
  }

  private Tiderule engine(Map<String, Double> protocol) {
    if (protocol.isEmpty()) {
      return engine;
    }
    List<String> rows = new ArrayList<>(List.of(String.join(",", OverlayReader.HEADING)));
    new TreeMap<>(protocol)
        .forEach(
            (id, value) -> rows.add(id + "," + value + ",a clinic of the case,a vet,2026-01-01"));
    String table = String.join("\n", rows);
    OverlayReading reading = OverlayReader.read("of the case", table, engine.rules().parameters());
    if (reading instanceof OverlayReading.Read read) {
      return engine.with(read.overlay());
    }
    throw new IllegalArgumentException(reading.toString());
  }

  private static Outcome outcome(Tiderule engine, byte[] cycleFile) {
    Reading reading = CycleFile.read(cycleFile);
    if (reading instanceof Reading.Refused refused) {
      return new Outcome.Refused(refused.problems());
    }
    Reading.Read read = (Reading.Read) reading;
    Advice advice = engine.advise(read.cycle());
    String report = AdviceReport.text(read.cycle(), advice).replaceAll("\\s+", " ");
    return new Outcome.Advised(read.cycle(), advice, report);
  }
}
