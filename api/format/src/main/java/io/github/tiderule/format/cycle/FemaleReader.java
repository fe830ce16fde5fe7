package io.github.tiderule.format.cycle;

import io.github.tiderule.engine.validation.Limits;
import io.github.tiderule.engine.validation.SeasonConsistency;
import io.github.tiderule.format.node.Field;
import io.github.tiderule.format.node.Fields;
import io.github.tiderule.rules.fact.EarlierCycle;
import io.github.tiderule.rules.fact.EarlierKind;
import io.github.tiderule.rules.fact.Female;
import io.github.tiderule.rules.fact.Treatment;
import io.github.tiderule.rules.fact.TreatmentForm;
import io.github.tiderule.rules.fact.TreatmentKind;
import io.github.tiderule.rules.fact.TreatmentPurpose;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Reads what is known of the female herself. */
final class FemaleReader {

  /** The female, with her history. */
  record Known(
      Female female,
      List<EarlierCycle> earlierCycles,
      List<Treatment> treatments,
      BackgroundReader.OfFemale background) {}

  private final Season season;
  private final @Nullable LocalDate firstBloodOn;

  private FemaleReader(Season season, @Nullable LocalDate firstBloodOn) {
    this.season = season;
    this.firstBloodOn = firstBloodOn;
  }

  static Known read(@Nullable Fields fields, Season season, @Nullable LocalDate firstBloodOn) {
    return fields == null
        ? new Known(Female.unknown(), List.of(), List.of(), BackgroundReader.OfFemale.nothing())
        : new FemaleReader(season, firstBloodOn).known(fields);
  }

  private Known known(Fields fields) {
    Female female =
        new Female(
            fields.optional("id").text(Limits.ID),
            fields.optional("name").text(Limits.NAME),
            fields.optional("breed").text(Limits.NAME),
            fields.optional("bodyMassKg").number(Limits.BODY_MASS),
            season.anyPastDay(fields.optional("bornOn")),
            fields.optional("littersWhelped").wholeNumber(Limits.COUNT),
            fields.optional("caesareans").wholeNumber(Limits.COUNT),
            fields.optional("missedPregnancies").wholeNumber(Limits.COUNT));
    List<EarlierCycle> earlierCycles = new ArrayList<>();
    for (Field entry : fields.optional("earlierCycles").entries(Limits.EARLIER_CYCLES)) {
      EarlierCycle cycle = earlierCycle(entry.members());
      if (cycle != null) {
        earlierCycles.add(cycle);
      }
    }
    List<Treatment> treatments = new ArrayList<>();
    for (Field entry : fields.optional("treatments").entries(Limits.TREATMENTS)) {
      Treatment treatment = treatment(entry.members());
      if (treatment != null) {
        treatments.add(treatment);
      }
    }
    BackgroundReader.OfFemale background = BackgroundReader.ofFemale(fields, season);
    fields.refuseOthers();
    return new Known(female, earlierCycles, treatments, background);
  }

  private @Nullable EarlierCycle earlierCycle(@Nullable Fields fields) {
    if (fields == null) {
      return null;
    }
    LocalDate blood = season.anyPastDay(fields.required("firstBloodOn"));
    LocalDate ovulated = season.anyPastDay(fields.optional("ovulatedOn"));
    LocalDate shifted = season.anyPastDay(fields.optional("dioestrusOn"));
    LocalDate whelped = season.anyPastDay(fields.optional("whelpedOn"));
    Integer litter = fields.optional("litterSize").wholeNumber(Limits.PUPS);
    Boolean pregnant = fields.optional("pregnant").flag();
    EarlierKind kind = fields.optional("kind").word(EarlierKind.class);
    fields.refuseOthers();
    SeasonConsistency.whelped(pregnant, whelped).ifPresent(fields::refuse);
    if (blood == null) {
      return null;
    }
    EarlierCycle earlier =
        new EarlierCycle(blood, ovulated, shifted, whelped, litter, pregnant, kind);
    fields.refuse(SeasonConsistency.order(earlier, firstBloodOn));
    return earlier;
  }

  private @Nullable Treatment treatment(@Nullable Fields fields) {
    if (fields == null) {
      return null;
    }
    TreatmentKind kind = fields.required("kind").word(TreatmentKind.class);
    LocalDate on = season.anyPastDay(fields.required("on"));
    TreatmentForm form = fields.optional("form").word(TreatmentForm.class);
    TreatmentPurpose purpose = fields.optional("purpose").word(TreatmentPurpose.class);
    LocalDate removedOn = season.anyPastDay(fields.optional("removedOn"));
    fields.refuseOthers();
    if (kind == null || on == null) {
      return null;
    }
    Treatment treatment = new Treatment(kind, on, form, purpose, removedOn);
    SeasonConsistency.removed(treatment).ifPresent(fields::refuse);
    return treatment;
  }
}
