package io.github.tiderule.format.fhir;

import io.github.tiderule.format.node.Field;
import io.github.tiderule.format.node.Fields;
import io.github.tiderule.format.node.Node;
import io.github.tiderule.format.node.Shown;
import io.github.tiderule.format.problem.Pointer;
import io.github.tiderule.format.problem.ProblemCode;
import io.github.tiderule.format.problem.Problems;
import io.github.tiderule.rules.fact.assay.Method;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Reads one Observation into the fields a cycle file has for it, all but its id. */
final class ObservationResource {

  private static final int CODE = 100;

  /** Fields in which a value may stand that is no quantity, or a moment that is none. */
  private static final List<String> OTHER_VALUES =
      List.of(
          "valueString",
          "valueCodeableConcept",
          "valueRange",
          "valueRatio",
          "valueInteger",
          "valueSampledData",
          "effectivePeriod",
          "effectiveTiming",
          "component");

  private final Node.Members resource;
  private final FhirFile file;
  private final ZoneId zone;
  private final Fields fields;
  private final Problems problems;
  private final Map<String, Node> found = new LinkedHashMap<>();
  private final Map<String, Pointer> places = new HashMap<>();
  private final List<String> notes = new ArrayList<>();
  private @Nullable Status status;

  private ObservationResource(
      Node.Members resource, Pointer at, FhirFile file, ZoneId zone, Problems problems) {
    this.resource = resource;
    this.file = file;
    this.zone = zone;
    this.fields = Fields.of(resource, at, problems);
    this.problems = problems;
  }

  /**
   * Reads one.
   *
   * @param zone a hint may complete a moment with it; none is ever taken from it
   * @param problems told what is against it
   */
  static ObservationResource read(
      Node.Members resource, Pointer at, FhirFile file, ZoneId zone, Problems problems) {
    ObservationResource one = new ObservationResource(resource, at, file, zone, problems);
    one.read();
    return one;
  }

  @Nullable Status status() {
    return status;
  }

  /** The observation, when no problem was noted. */
  Node.Members observation(String id) {
    Map<String, Node> all = new LinkedHashMap<>();
    all.put("id", new Node.Text(id));
    all.put("kind", new Node.Text("progesterone"));
    all.putAll(found);
    return new Node.Members(all);
  }

  /** What is to be said of it that hinders nothing. */
  List<String> notes() {
    return notes;
  }

  /** Where the Observation says what stands in that field of the cycle file. */
  Pointer place(String field) {
    return places.getOrDefault(field, fields.at());
  }

  /** The ids it may have in the season, the first one first. */
  List<String> ids(String season) {
    List<String> ids = new ArrayList<>();
    for (Node.Members identifier : resource.objects("identifier")) {
      String value = identifier.text("value");
      String system = identifier.text("system");
      if (value != null && !value.isBlank()) {
        ids.add(Identifiers.id(system == null ? "" : system, value, season));
      }
    }
    String id = resource.text("id");
    if (id != null && !id.isBlank()) {
      ids.add(Identifiers.id("Observation", id, season));
    }
    return ids;
  }

  private void read() {
    for (String name : List.of("modifierExtension", "implicitRules")) {
      if (fields.has(name)) {
        fields
            .optional(name)
            .refuse(
                ProblemCode.UNKNOWN_FIELD,
                name + " says that the Observation means something else than it seems to",
                "Maybe its sender can send it without?");
      }
    }
    status = fields.required("status").word(Status.class);
    Analyte analyte = analyte();
    if (status == Status.UNKNOWN) {
      fields
          .required("status")
          .refuse(
              ProblemCode.UNKNOWN_WORD,
              "status is \"unknown\"",
              "Ask the laboratory whether the result is final.");
    }
    if (status == null || analyte == null || !status.hasResult()) {
      return;
    }
    for (String name : OTHER_VALUES) {
      if (fields.has(name)) {
        fields
            .optional(name)
            .refuse(
                ProblemCode.UNKNOWN_FIELD,
                name + " is not read; a result is one valueQuantity at one effectiveDateTime");
      }
    }
    at();
    quantity(analyte);
    laboratory();
    method();
    sample();
  }

  private @Nullable Analyte analyte() {
    Fields code = fields.required("code").members();
    if (code == null) {
      return null;
    }
    Analyte analyte = null;
    Field coding = code.optional("coding");
    for (Field one : coding.entries(CODE)) {
      Fields parts = one.members();
      if (parts == null || !Analyte.LOINC.equals(parts.optional("system").anyText())) {
        continue;
      }
      Field field = parts.required("code");
      String text = field.text(CODE);
      Analyte known = text == null ? null : Analyte.of(text).orElse(null);
      if (text != null && known == null) {
        field.refuse(
            ProblemCode.UNKNOWN_WORD,
            "LOINC " + Shown.quoted(text) + " is not progesterone as it is known here",
            "Known: " + Analyte.all() + ".");
      }
      if (analyte != null && known != null && analyte != known) {
        field.refuse(
            ProblemCode.WRONG_TYPE,
            "LOINC "
                + known.code()
                + " and "
                + analyte.code()
                + " are two quantities, and it is one result",
            "Ask the laboratory which of the two it is.");
      }
      analyte = analyte == null ? known : analyte;
    }
    if (analyte == null && problems.none()) {
      coding.refuse(
          ProblemCode.MISSING_FIELD,
          "code has no LOINC code, so what was measured is not known",
          "Known: " + Analyte.all() + ", with the system " + Analyte.LOINC + ".");
    }
    return analyte;
  }

  private void at() {
    String name = fields.has("effectiveInstant") ? "effectiveInstant" : "effectiveDateTime";
    Field field = fields.required(name);
    places.put("at", field.at());
    Instant at = field.instant(zone);
    String text = resource.text(name);
    if (at != null && text != null) {
      found.put("at", new Node.Text(text));
    }
    Field issued = fields.optional("issued");
    places.put("reportedAt", issued.at());
    Instant reportedAt = issued.instant(zone);
    String words = resource.text("issued");
    if (reportedAt != null && words != null) {
      found.put("reportedAt", new Node.Text(words));
    }
  }

  private void quantity(Analyte analyte) {
    if (fields.has("dataAbsentReason") && !fields.has("valueQuantity")) {
      fields
          .optional("dataAbsentReason")
          .refuse(ProblemCode.MISSING_FIELD, "there is no value, and dataAbsentReason says why");
      return;
    }
    Fields members = fields.required("valueQuantity").members();
    if (members != null) {
      Quantity quantity = Quantity.read(members, resource.members("valueQuantity"), analyte);
      found.putAll(quantity.found());
      places.putAll(quantity.places());
      if (!quantity.found().containsKey("unit")) {
        notes.add("It has no UCUM code, so its unit is not known and will be asked about.");
      }
    }
  }

  private void laboratory() {
    for (Node.Members performer : resource.objects("performer")) {
      Node.Members organization = file.resolve(performer, resource);
      String name = performer.text("display");
      if (name == null && organization != null) {
        name = organization.text("name");
      }
      if (name == null) {
        name = performer.text("reference");
      }
      if (name != null && !name.isBlank()) {
        found.put("laboratory", new Node.Text(name.strip()));
        places.put("laboratory", fields.at().child("performer"));
        return;
      }
    }
  }

  private void method() {
    Set<String> words = Concept.words(resource.members("method"));
    Concept.meant(words, Method.class, Map.of())
        .ifPresentOrElse(
            one -> found.put("method", new Node.Text(one.word())),
            () -> {
              if (!words.isEmpty()) {
                notes.add(
                    "Its method, "
                        + Shown.quoted(words.iterator().next())
                        + ", is not one known here, and is left out.");
              }
            });
  }

  private void sample() {
    Node.Members sample = file.resolve(resource.members("specimen"), resource);
    if (sample == null) {
      return;
    }
    Sample.addTo(found, sample);
    String taken = Sample.takenAt(sample);
    Node at = found.get("at");
    if (taken != null && at instanceof Node.Text drawn) {
      Problems ignored = new Problems();
      Instant one =
          Fields.of(new Node.Members(Map.of("at", new Node.Text(taken))), Pointer.ROOT, ignored)
              .required("at")
              .instant(zone);
      Instant other = OffsetDateTime.parse(drawn.value()).toInstant();
      if (one != null && !one.equals(other)) {
        fields
            .optional("specimen")
            .refuse(
                ProblemCode.WRONG_ORDER,
                "the specimen was collected at "
                    + taken
                    + ", and the result is for "
                    + drawn.value(),
                "Ask the laboratory when the blood was drawn.");
      }
    }
  }
}
