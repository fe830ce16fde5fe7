package io.github.tiderule.format;

import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.format.cycle.CycleFile;
import io.github.tiderule.format.cycle.Reading;
import io.github.tiderule.format.problem.Problem;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;

/** Documents that tests read. */
public final class Documents {

  private Documents() {}

  /** A cycle file with every field there is. Invented. */
  public static String fullCycle() {
    return resource("/io/github/tiderule/format/full-cycle.json");
  }

  /** A cycle file with no more than it must have, and one observation if one is given. */
  public static String cycleWith(String observations) {
    return """
        {"schema": "tiderule/cycle/1", "asOf": "2027-01-12T18:30:00+01:00",
         "zone": "Europe/Vienna", "firstBlood": {"on": "2027-01-03", "certainty": "seen"},
         "observations": [%s]}
        """
        .formatted(observations);
  }

  /** The full cycle file with the first place of one text in it replaced. */
  public static String fullCycle(String part, String instead) {
    String whole = fullCycle();
    if (!whole.contains(part)) {
      throw new IllegalArgumentException("no such part: " + part);
    }
    int at = whole.indexOf(part);
    return whole.substring(0, at) + instead + whole.substring(at + part.length());
  }

  /** The record of a file that must be read. */
  public static CycleRecord read(String json) {
    Reading reading = CycleFile.read(json.getBytes(StandardCharsets.UTF_8));
    if (reading instanceof Reading.Read read) {
      return read.cycle();
    }
    throw new AssertionError(reading.toString());
  }

  /** The problems of a file that must be refused. */
  public static List<Problem> refused(String json) {
    return refused(json.getBytes(StandardCharsets.UTF_8));
  }

  /** The problems of a file that must be refused. */
  public static List<Problem> refused(byte[] utf8) {
    if (CycleFile.read(utf8) instanceof Reading.Refused refused) {
      return refused.problems();
    }
    throw new AssertionError("the file was read");
  }

  /** The text of a resource. */
  public static String resource(String name) {
    try (InputStream in = Documents.class.getResourceAsStream(name)) {
      return new String(Objects.requireNonNull(in, name).readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
