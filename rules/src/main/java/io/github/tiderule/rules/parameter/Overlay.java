package io.github.tiderule.rules.parameter;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.LocalDate;
import java.util.HexFormat;
import java.util.List;

/**
 * A clinic's own values of some parameters. Rules are never changed by it.
 *
 * @param name what the clinic calls it, such as the name of its file
 * @param fingerprint {@code sha256:} and 64 hexadecimal digits over its text
 * @param changes by id, at least one
 */
public record Overlay(String name, String fingerprint, List<Change> changes) {

  /**
   * One changed parameter.
   *
   * @param usual the value that comes with the rules
   * @param value the clinic's own
   * @param reason why, in the clinic's words
   * @param by who answers for it
   * @param since from when the clinic works by it
   */
  public record Change(
      String id,
      double usual,
      double value,
      String unit,
      String reason,
      String by,
      LocalDate since) {}

  public Overlay {
    changes = List.copyOf(changes);
  }

  /** An overlay read from a text, named and hashed. */
  static Overlay of(String name, String text, List<Change> changes) {
    try {
      byte[] hash =
          MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
      return new Overlay(name, "sha256:" + HexFormat.of().formatHex(hash), changes);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }
}
