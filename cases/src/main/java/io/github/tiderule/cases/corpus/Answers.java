package io.github.tiderule.cases.corpus;

import io.github.tiderule.api.report.AdviceReport;
import io.github.tiderule.engine.Tiderule;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.format.cycle.CycleFile;
import io.github.tiderule.format.cycle.Reading;
import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/** Takes each cycle file through the reader and the engine, once. */
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

  /** What comes of the cycle file in a folder. */
  public Outcome to(CaseFolder folder) {
    return known.computeIfAbsent(folder.path(), path -> outcome(folder.cycle()));
  }

  private Outcome outcome(byte[] cycleFile) {
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
