package io.github.tiderule.format.cycle;

import io.github.tiderule.format.node.Node;
import io.github.tiderule.format.node.NodeText;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Puts a cycle file together from its parts as they are kept, and takes one apart. */
public final class CycleText {

  /** Fields of a cycle file that are not part of what is kept as the season's document. */
  public static final Set<String> KEPT_APART = Set.of("schema", "asOf", "female", "observations");

  private static final String NOTHING_KNOWN =
      "{\"zone\":\"UTC\",\"firstBlood\":{\"certainty\":\"unknown\"}}";

  private CycleText() {}

  /**
   * A cycle file on one line, without a line feed.
   *
   * @param asOf the moment it is for; cut to whole seconds
   * @param female the {@code female} object
   * @param season an object with the rest of the file
   * @param observations the observations, in their order
   */
  public static String of(Instant asOf, String female, String season, List<String> observations) {
    String rest = season.strip();
    String inside = rest.substring(1, rest.length() - 1).strip();
    return "{\"schema\":\"tiderule/cycle/1\",\"asOf\":\""
        + asOf.truncatedTo(ChronoUnit.SECONDS)
        + "\","
        + inside
        + (inside.isEmpty() ? "" : ",")
        + "\"female\":"
        + female
        + ",\"observations\":["
        + String.join(",", observations)
        + "]}";
  }

  /** A cycle file that says nothing but who the female is, for reading her alone. */
  public static String ofFemale(Instant asOf, String female) {
    return of(asOf, female, NOTHING_KNOWN, List.of());
  }

  /** Reads a cycle file that was put together here. */
  public static Reading read(String cycleFile) {
    return CycleFile.read(cycleFile.getBytes(StandardCharsets.UTF_8));
  }

  /** What of a cycle file's object is kept as the season's document. */
  public static String season(Node.Members file) {
    Map<String, Node> kept = new LinkedHashMap<>(file.byKey());
    kept.keySet().removeAll(KEPT_APART);
    return NodeText.of(new Node.Members(kept));
  }
}
