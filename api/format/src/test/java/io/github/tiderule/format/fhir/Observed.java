package io.github.tiderule.format.fhir;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.format.cycle.CycleText;
import io.github.tiderule.format.cycle.Reading;
import io.github.tiderule.format.node.Node;
import io.github.tiderule.format.node.NodeText;
import io.github.tiderule.format.problem.Pointer;
import io.github.tiderule.format.problem.Problem;
import io.github.tiderule.format.problem.Problems;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Observations, and a season to take them into; all invented. */
final class Observed {

  static final String SEASON = "0123456789abcdefghjkmnpqrs";

  private static final ObjectMapper JSON = new ObjectMapper();
  private static final String ORDINARY =
      """
      {"resourceType": "Observation",
       "identifier": [{"system": "https://laboratory.example/result", "value": "4711"}],
       "status": "final",
       "code": {"coding": [{"system": "http://loinc.org", "code": "2839-9"}]},
       "subject": {"display": "Juniper"},
       "effectiveDateTime": "2027-01-10T08:00:00+01:00",
       "issued": "2027-01-10T15:30:00Z",
       "performer": [{"display": "North"}],
       "valueQuantity": {"value": 3.2, "unit": "ng/mL", "system": "http://unitsofmeasure.org",
                         "code": "ng/mL"},
       "method": {"text": "clia"}}
      """;

  private Observed() {}

  /** An ordinary one. */
  static ObjectNode ordinary() {
    return object(ORDINARY);
  }

  static ObjectNode object(String json) {
    try {
      return (ObjectNode) JSON.readTree(json);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** An ordinary one with another text in it. */
  static ObjectNode with(String target, String replacement) {
    return object(text(target, replacement));
  }

  /** The text of an ordinary one with another text in it, which need not be JSON then. */
  static String text(String target, String replacement) {
    if (!ORDINARY.contains(target)) {
      throw new AssertionError("there is no " + target);
    }
    return ORDINARY.replace(target, replacement);
  }

  /** A season of Juniper's with these observations. */
  static CycleRecord season(String... observations) {
    String file =
        CycleText.of(
            Instant.parse("2027-01-12T17:30:00Z"),
            "{\"id\": \"juniper\", \"name\": \"Juniper\", \"breed\": \"Whippet\","
                + " \"bornOn\": \"2022-03-10\"}",
            "{\"zone\": \"Europe/Vienna\","
                + " \"firstBlood\": {\"on\": \"2027-01-03\", \"certainty\": \"seen\"}}",
            List.of(observations));
    return ((Reading.Read) CycleText.read(file)).cycle();
  }

  static List<Found> found(CycleRecord season, @Nullable String subject, String file) {
    Problems problems = new Problems();
    return FhirImport.preview(file, season, SEASON, subject, Set.of(), Pointer.ROOT, problems)
        .orElseThrow(() -> new AssertionError(problems.all().toString()));
  }

  /** What becomes of one in a season that has nothing but first blood. */
  static Found one(ObjectNode observation) {
    return found(season(), null, observation.toString()).get(0);
  }

  /** Where it is refused and why, as {@code pointer code}. */
  static List<String> refusals(ObjectNode observation) {
    return one(observation).problems().stream()
        .map(problem -> problem.path() + " " + problem.code().word())
        .toList();
  }

  static List<Problem> against(String file) {
    Problems problems = new Problems();
    boolean read =
        FhirImport.preview(file, season(), SEASON, null, Set.of(), Pointer.ROOT, problems)
            .isPresent();
    if (read) {
      throw new AssertionError("it was taken: " + file);
    }
    return problems.all();
  }

  static String shown(Node.@Nullable Members observation) {
    return observation == null ? "" : NodeText.of(observation).replace('"', '\'');
  }
}
