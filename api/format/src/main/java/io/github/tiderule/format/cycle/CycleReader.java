package io.github.tiderule.format.cycle;

import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.format.node.Field;
import io.github.tiderule.format.node.Fields;
import io.github.tiderule.format.node.Node;
import io.github.tiderule.format.problem.NearMiss;
import io.github.tiderule.format.problem.ProblemCode;
import io.github.tiderule.format.problem.Problems;
import io.github.tiderule.rules.fact.Certainty;
import io.github.tiderule.rules.fact.FirstBlood;
import io.github.tiderule.rules.fact.Outcome;
import io.github.tiderule.rules.fact.assay.LaboratoryHours;
import io.github.tiderule.rules.fact.observation.Observation;
import io.github.tiderule.rules.fact.semen.SemenPlan;
import io.github.tiderule.rules.kennel.Background;
import io.github.tiderule.rules.semen.Insemination;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.zone.ZoneRulesProvider;
import java.util.List;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/** Reads the top of a cycle file. */
final class CycleReader {

  static final String SCHEMA = "tiderule/cycle/1";

  private CycleReader() {}

  /** The record a document describes; absent when something it needs could not be read. */
  static @Nullable CycleRecord read(
      Node document, @Nullable Instant asOfInstead, Problems problems) {
    Fields fields = Fields.of(document, problems);
    if (fields == null) {
      return null;
    }
    schema(fields.required("schema"));
    ZoneId zone = zone(fields.required("zone"));
    Season unbounded = new Season(null, zone);
    Instant ownAsOf = unbounded.anyInstant(fields.required("asOf"));
    Instant asOf = asOfInstead == null ? ownAsOf : asOfInstead;
    Season season = new Season(asOf, zone);
    FirstBlood firstBlood = firstBlood(fields.required("firstBlood").members(), season);
    FemaleReader.Known female =
        FemaleReader.read(
            fields.optional("female").members(),
            season,
            firstBlood == null ? null : firstBlood.on());
    List<Observation> observations = ObservationReader.all(fields.required("observations"), season);
    Insemination insemination =
        InseminationReader.read(fields.optional("insemination").members(), season);
    SemenPlan semenPlan =
        BreedingReader.read(
            fields.optional("breeding").members(), InseminationReader.kind(insemination), season);
    Background background =
        BackgroundReader.read(female.background(), fields.optional("stud").members(), season);
    LaboratoryHours laboratory = LaboratoryReader.read(fields.optional("laboratory").members());
    Outcome outcome =
        PregnancyReader.outcome(
            fields.optional("outcome").members(),
            season,
            firstBlood == null ? null : firstBlood.on());
    fields.refuseOthers();
    if (asOf == null || zone == null || firstBlood == null) {
      return null;
    }
    return problems.none()
        ? new CycleRecord(
            asOf,
            zone,
            female.female(),
            female.earlierCycles(),
            female.treatments(),
            firstBlood,
            observations,
            semenPlan,
            laboratory,
            outcome,
            insemination,
            background)
        : null;
  }

  private static void schema(Field field) {
    String text = field.text(Texts.NAME);
    if (text != null && !text.equals(SCHEMA)) {
      field.refuse(
          ProblemCode.UNKNOWN_SCHEMA, "schema is \"" + text + "\", not \"" + SCHEMA + "\"");
    }
  }

  private static @Nullable ZoneId zone(Field field) {
    String text = field.text(Texts.NAME);
    if (text == null) {
      return null;
    }
    if (ZoneRulesProvider.getAvailableZoneIds().contains(text)) {
      return ZoneId.of(text);
    }
    String message = "zone is \"" + text + "\", which the tz database does not know";
    NearMiss.of(text, new TreeSet<>(ZoneRulesProvider.getAvailableZoneIds()))
        .ifPresentOrElse(
            near -> field.refuse(ProblemCode.UNKNOWN_ZONE, message, "Maybe \"" + near + "\"?"),
            () -> field.refuse(ProblemCode.UNKNOWN_ZONE, message));
    return null;
  }

  private static @Nullable FirstBlood firstBlood(@Nullable Fields fields, Season season) {
    if (fields == null) {
      return null;
    }
    Certainty certainty = fields.required("certainty").word(Certainty.class);
    Field field =
        certainty == Certainty.SEEN || certainty == Certainty.ESTIMATED
            ? fields.required("on")
            : fields.optional("on");
    LocalDate on = season.pastDay(field);
    fields.refuseOthers();
    return certainty == null ? null : new FirstBlood(on, certainty);
  }
}
