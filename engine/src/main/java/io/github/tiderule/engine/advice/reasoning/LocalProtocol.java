package io.github.tiderule.engine.advice.reasoning;

import io.github.tiderule.engine.advice.Change;
import io.github.tiderule.rules.parameter.Overlay;
import java.time.LocalDate;
import java.util.List;

/**
 * The parameters a clinic set itself.
 *
 * @param name what the clinic calls them, such as the name of the file
 * @param hash {@code sha256:} and the hash of their text
 * @param changes by parameter, at least one
 */
public record LocalProtocol(String name, String hash, List<Change> changes) {

  /**
   * One changed parameter.
   *
   * @param usual the value that comes with the rules
   * @param local the clinic's own
   * @param by who answers for it
   */
  public record Change(
      String parameter,
      double usual,
      double local,
      String unit,
      String reason,
      String by,
      LocalDate since) {}

  public LocalProtocol {
    changes = List.copyOf(changes);
  }

  /** What an answer says of an overlay. */
  public static LocalProtocol of(Overlay overlay) {
    return new LocalProtocol(
        overlay.name(),
        overlay.fingerprint(),
        overlay.changes().stream()
            .map(
                change ->
                    new Change(
                        change.id(),
                        change.usual(),
                        change.value(),
                        change.unit(),
                        change.reason(),
                        change.by(),
                        change.since()))
            .toList());
  }
}
