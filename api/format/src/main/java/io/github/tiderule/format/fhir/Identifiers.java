package io.github.tiderule.format.fhir;

import java.nio.charset.StandardCharsets;
import java.util.UUID;

/** The ids of observations that came from elsewhere, and the identifiers of those that go there. */
final class Identifiers {

  /** The system of identifiers given here: key of the season, a stroke, id of the observation. */
  static final String OURS = "tag:tiderule.github.io,2026:observation";

  private static final int SHOWN = 40;
  private static final int TELLING_APART = 8;

  private Identifiers() {}

  /**
   * The id in the season of what a system identifies so; the same each time, and another for the
   * same value in another system.
   *
   * @param season key of the season
   */
  static String id(String system, String value, String season) {
    if (system.equals(OURS) && value.startsWith(season + "/")) {
      return value.substring(season.length() + 1);
    }
    String plain = value.replaceAll("[^A-Za-z0-9.-]", "");
    String digest =
        UUID.nameUUIDFromBytes((system + "\n" + value).getBytes(StandardCharsets.UTF_8)).toString();
    return "fhir-"
        + plain.substring(0, Math.min(SHOWN, plain.length()))
        + "-"
        + digest.substring(0, TELLING_APART);
  }

  static String value(String season, String id) {
    return season + "/" + id;
  }
}
