package io.github.tiderule.api.command.stream;

import io.github.tiderule.api.report.RefusalReport;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.format.cycle.CycleFile;
import io.github.tiderule.format.cycle.Reading;
import io.github.tiderule.format.json.Layout;
import io.github.tiderule.format.json.ProblemsJson;
import java.io.IOException;
import java.io.InputStream;
import java.time.Instant;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Reads cycle files for a command and says what is wrong with those that are refused.
 *
 * @param json whether a refusal is printed as a document on the standard output, and not for people
 *     on the standard error
 */
public record CycleFiles(Streams streams, boolean json) {

  /**
   * A cycle file; nothing once its refusal has been printed.
   *
   * @param asOf the moment to advise for instead of the file's own, if given
   * @throws IOException if the refusal cannot be written
   */
  public Optional<CycleRecord> read(Given file, @Nullable Instant asOf) throws IOException {
    Reading reading;
    try (InputStream in = file.open(streams)) {
      reading = reading(file, in, asOf);
    } catch (Given.Unreadable e) {
      refuse(e.getMessage());
      return Optional.empty();
    }
    return accepted(file.words(), reading);
  }

  /**
   * What was read; nothing once its refusal has been printed.
   *
   * @param words what the file is called in messages
   * @throws IOException if the refusal cannot be written
   */
  public Optional<CycleRecord> accepted(String words, Reading reading) throws IOException {
    if (reading instanceof Reading.Refused refused) {
      if (json) {
        new Output(streams.out()).print(ProblemsJson.text(refused.problems(), Layout.INDENTED));
      } else {
        new Output(streams.err()).print(RefusalReport.text(words, refused.problems()));
      }
      return Optional.empty();
    }
    return Optional.of(((Reading.Read) reading).cycle());
  }

  /**
   * Says why a command does nothing.
   *
   * @return the exit status
   * @throws IOException if it cannot be written
   */
  public int refuse(@Nullable String message) throws IOException {
    new Output(streams.err()).print(message + "\n");
    return ExitStatus.REFUSED;
  }

  private static Reading reading(Given file, InputStream in, @Nullable Instant asOf)
      throws Given.Unreadable {
    try {
      return CycleFile.read(in, asOf);
    } catch (IOException e) {
      throw new Given.Unreadable(file.words() + " cannot be read to its end.");
    }
  }
}
