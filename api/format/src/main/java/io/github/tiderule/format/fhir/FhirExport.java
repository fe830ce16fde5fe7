package io.github.tiderule.format.fhir;

import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.format.json.Document;
import io.github.tiderule.format.json.Layout;
import io.github.tiderule.rules.fact.Female;
import io.github.tiderule.rules.fact.Worded;
import io.github.tiderule.rules.fact.assay.Method;
import io.github.tiderule.rules.fact.assay.Unit;
import io.github.tiderule.rules.fact.observation.Progesterone;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Writes the progesterone results of a season as a FHIR R4 Bundle: a Patient, and an Observation
 * for each value. Kit bands and everything else that was observed are not in it.
 */
public final class FhirExport {

  /** Media type of the text. */
  public static final String MEDIA_TYPE = "application/fhir+json";

  private static final String ANIMAL = "http://hl7.org/fhir/StructureDefinition/patient-animal";
  private static final String SPECIES = "http://hl7.org/fhir/animal-species";
  private static final String CATEGORY =
      "http://terminology.hl7.org/CodeSystem/observation-category";
  private static final int DIGITS = 9;

  /** One result and how far it has come. */
  private record Result(Progesterone value, Status status) {}

  private final String season;
  private final ZoneId zone;
  private final Female female;

  private FhirExport(String season, CycleRecord cycle) {
    this.season = season;
    this.zone = cycle.zone();
    this.female = cycle.female();
  }

  /**
   * The bundle.
   *
   * @param season key of the season; the identifiers begin with it
   * @param corrected ids of the observations that once read otherwise
   * @param takenBack results that were taken back
   */
  public static String text(
      CycleRecord cycle,
      String season,
      Set<String> corrected,
      List<Progesterone> takenBack,
      Layout layout) {
    List<Result> results = new ArrayList<>();
    cycle.observations().stream()
        .filter(Progesterone.class::isInstance)
        .map(Progesterone.class::cast)
        .forEach(
            one ->
                results.add(
                    new Result(
                        one, corrected.contains(one.id()) ? Status.CORRECTED : Status.FINAL)));
    takenBack.forEach(one -> results.add(new Result(one, Status.ENTERED_IN_ERROR)));
    FhirExport export = new FhirExport(season, cycle);
    return Document.text(layout, json -> export.bundle(json, cycle.asOf(), results));
  }

  private void bundle(Document json, Instant asOf, List<Result> results) {
    List<Runnable> entries =
        Stream.concat(
                Stream.<Runnable>of(() -> patient(json)),
                results.stream().map(one -> () -> observation(json, one)))
            .toList();
    json.text("resourceType", "Bundle")
        .text("type", "collection")
        .instant("timestamp", at(asOf))
        .objects("entry", entries, Runnable::run);
  }

  private OffsetDateTime at(Instant instant) {
    return instant.atZone(zone).toOffsetDateTime();
  }

  private String url(String of) {
    return "urn:uuid:"
        + UUID.nameUUIDFromBytes((season + "/" + of).getBytes(StandardCharsets.UTF_8));
  }

  private void patient(Document json) {
    json.text("fullUrl", url("/female")).object("resource", female, her -> patient(json, her));
  }

  private static void patient(Document json, Female her) {
    json.text("resourceType", "Patient")
        .objects("extension", List.of(her), one -> animal(json, one));
    if (her.id() != null) {
      json.objects("identifier", List.of(her.id()), id -> json.text("value", id));
    }
    if (her.name() != null) {
      json.objects("name", List.of(her.name()), name -> json.text("text", name));
    }
    json.text("gender", "female");
    if (her.bornOn() != null) {
      json.day("birthDate", her.bornOn());
    }
  }

  /** Extension and code system are from memory. */
  private static void animal(Document json, Female her) {
    List<Runnable> parts = new ArrayList<>();
    parts.add(
        () ->
            json.text("url", "species")
                .object(
                    "valueCodeableConcept", "canislf", code -> coding(json, SPECIES, code, "Dog")));
    String breed = her.breed();
    if (breed != null) {
      parts.add(
          () ->
              json.text("url", "breed")
                  .object("valueCodeableConcept", breed, text -> json.text("text", text)));
    }
    json.objects("extension", parts, Runnable::run).text("url", ANIMAL);
  }

  private static void coding(Document json, String system, String code, @Nullable String display) {
    json.objects(
        "coding",
        List.of(code),
        one -> {
          json.text("system", system).text("code", one);
          if (display != null) {
            json.text("display", display);
          }
        });
  }

  private void observation(Document json, Result result) {
    json.text("fullUrl", url(result.value().id()))
        .object("resource", result, one -> resource(json, one.value(), one.status()));
  }

  private void resource(Document json, Progesterone value, Status status) {
    json.text("resourceType", "Observation");
    boolean hasSample =
        value.specimen() != null || value.tube() != null || !value.handling().isEmpty();
    if (hasSample) {
      json.objects("contained", List.of(value), one -> sample(json, one));
    }
    json.objects(
            "identifier",
            List.of(Identifiers.value(season, value.id())),
            id -> json.text("system", Identifiers.OURS).text("value", id))
        .word("status", status)
        .objects(
            "category", List.of("laboratory"), code -> coding(json, CATEGORY, code, "Laboratory"))
        .object("code", value, one -> code(json, one.statedUnit()))
        .object("subject", url("/female"), url -> json.text("reference", url))
        .instant("effectiveDateTime", at(value.at()));
    if (value.reportedAt() != null) {
      json.instant("issued", at(value.reportedAt()));
    }
    if (value.laboratory() != null) {
      json.objects("performer", List.of(value.laboratory()), name -> json.text("display", name));
    }
    json.object("valueQuantity", value, one -> quantity(json, one));
    if (value.method() != Method.UNKNOWN) {
      json.object("method", value.method(), one -> json.word("text", one));
    }
    if (hasSample) {
      json.object("specimen", "#sample", id -> json.text("reference", id));
    }
  }

  /** A value without a unit can be a mass or moles, and no code says it is either. */
  private static void code(Document json, @Nullable Unit unit) {
    if (unit != null) {
      Analyte analyte = Analyte.of(unit);
      coding(json, Analyte.LOINC, analyte.code(), analyte.display());
    }
    json.text("text", "Progesterone");
  }

  private static void quantity(Document json, Progesterone value) {
    json.figure("value", value.value(), DIGITS);
    if (value.comparator() != null) {
      json.word("comparator", value.comparator());
    }
    Unit unit = value.statedUnit();
    if (unit != null) {
      json.word("unit", unit).text("system", Ucum.SYSTEM).text("code", Ucum.code(unit));
    }
  }

  private static void sample(Document json, Progesterone value) {
    json.text("resourceType", "Specimen").text("id", "sample");
    if (value.specimen() != null) {
      json.object(
          "type",
          value.specimen(),
          one -> {
            coding(json, Sample.TYPES, Sample.code(one), null);
            json.word("text", one);
          });
    }
    if (value.tube() != null) {
      json.objects(
          "container",
          List.of(Objects.requireNonNull(value.tube())),
          tube -> json.object("type", tube, one -> json.word("text", one)));
    }
    if (!value.handling().isEmpty()) {
      json.objects(
          "condition", List.<Worded>copyOf(value.handling()), one -> json.word("text", one));
    }
  }
}
