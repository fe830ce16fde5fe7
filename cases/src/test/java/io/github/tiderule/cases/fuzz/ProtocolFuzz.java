package io.github.tiderule.cases.fuzz;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.is;

import com.code_intelligence.jazzer.junit.DictionaryFile;
import com.code_intelligence.jazzer.junit.FuzzTest;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.Tiderule;
import io.github.tiderule.format.cycle.CycleFile;
import io.github.tiderule.format.cycle.Reading;
import io.github.tiderule.rules.parameter.Overlay;
import io.github.tiderule.rules.parameter.OverlayFault;
import io.github.tiderule.rules.parameter.OverlayReader;
import io.github.tiderule.rules.parameter.OverlayReading;
import io.github.tiderule.rules.parameter.Parameters;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Any text as a clinic's own numbers: refused with its faults, or rules that still give advice that
 * holds together.
 */
class ProtocolFuzz {

  private static final Parameters PARAMETERS = Sound.ENGINE.rules().parameters();
  private static final CycleRecord CYCLE = demonstration();

  @DictionaryFile(resourcePath = "protocol.dict")
  @FuzzTest(maxDuration = Fuzzing.MOST)
  void read(byte[] file) {
    String text = new String(file, StandardCharsets.UTF_8);
    OverlayReading reading = OverlayReader.read("clinic.csv", text, PARAMETERS);
    if (reading instanceof OverlayReading.Refused refused) {
      assertThat("a refusal has a reason", refused.faults().isEmpty(), is(false));
      for (OverlayFault fault : refused.faults()) {
        assertThat(fault.toString(), fault.line() >= 0 && fault.line() <= 1 + text.lines().count());
        assertThat(fault.toString(), fault.message().isBlank(), is(false));
        Shown.text(fault.message());
      }
    } else if (reading instanceof OverlayReading.Read read) {
      within(read.overlay());
      Tiderule clinic = Sound.ENGINE.with(read.overlay());
      Sound.advice(clinic, CYCLE);
    }
  }

  private static void within(Overlay overlay) {
    for (Overlay.Change change : overlay.changes()) {
      double least = PARAMETERS.byId().get(change.id()).min();
      double most = PARAMETERS.byId().get(change.id()).max();
      assertThat(change.toString(), change.value() >= least && change.value() <= most);
    }
  }

  private static CycleRecord demonstration() {
    try {
      Reading reading = CycleFile.read(Files.readAllBytes(Path.of("demo", "frozen-one-dose.json")));
      return ((Reading.Read) reading).cycle();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
