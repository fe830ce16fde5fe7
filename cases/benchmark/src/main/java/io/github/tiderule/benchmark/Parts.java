package io.github.tiderule.benchmark;

import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.Tiderule;
import io.github.tiderule.format.cycle.CycleFile;
import io.github.tiderule.format.cycle.Reading;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import jdk.jfr.Recording;
import jdk.jfr.consumer.RecordedEvent;
import jdk.jfr.consumer.RecordingFile;

/** Where the time of warm answers goes, as the engine's own flight-recorder events tell it. */
final class Parts {

  private static final String EVENT = "io.github.tiderule.Part";

  private Parts() {}

  /**
   * The median time of each part, ms, in the order in which parts end.
   *
   * @param file a cycle file
   * @param warmUp how many answers do not count
   * @param runs how many do
   */
  static Map<String, Double> of(Tiderule engine, byte[] file, int warmUp, int runs)
      throws IOException {
    CycleRecord cycle = ((Reading.Read) CycleFile.read(file)).cycle();
    for (int i = 0; i < warmUp; i++) {
      engine.advise(cycle);
    }
    Path recorded = Files.createTempFile("tiderule", ".jfr");
    try (Recording recording = new Recording()) {
      recording.enable(EVENT).withThreshold(java.time.Duration.ZERO);
      recording.start();
      for (int i = 0; i < runs; i++) {
        engine.advise(cycle);
      }
      recording.stop();
      recording.dump(recorded);
    }
    Map<String, List<Double>> times = new LinkedHashMap<>();
    for (RecordedEvent event : RecordingFile.readAllEvents(recorded)) {
      if (event.getEventType().getName().equals(EVENT)) {
        times
            .computeIfAbsent(event.getString("what"), what -> new ArrayList<>())
            .add(event.getDuration().toNanos() / 1e6);
      }
    }
    Files.delete(recorded);
    Map<String, Double> medians = new LinkedHashMap<>();
    times.forEach((what, all) -> medians.put(what, Medians.of(all)));
    return medians;
  }
}
