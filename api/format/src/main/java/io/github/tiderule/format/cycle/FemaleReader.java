package io.github.tiderule.format.cycle;

import io.github.tiderule.format.node.Field;
import io.github.tiderule.format.node.Fields;
import io.github.tiderule.format.node.Range;
import io.github.tiderule.format.problem.ProblemCode;
import io.github.tiderule.rules.fact.EarlierCycle;
import io.github.tiderule.rules.fact.Female;
import io.github.tiderule.rules.fact.Treatment;
import io.github.tiderule.rules.fact.TreatmentKind;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Reads what is known of the female herself. */
final class FemaleReader {

  static final Range BODY_MASS = Range.of(0.5, 150, "kg");
  private static final Range COUNT = Range.of(0, 40, "");
  private static final int MOST_EARLIER_CYCLES = 50;
  private static final int MOST_TREATMENTS = 100;
  private static final int LONGEST_SEASON_DAYS = 90;
  private static final int LONGEST_PREGNANCY_DAYS = 75;

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
            fields.optional("id").text(Texts.ID),
            fields.optional("name").text(Texts.NAME),
            fields.optional("breed").text(Texts.NAME),
            fields.optional("bodyMassKg").number(BODY_MASS),
            season.anyPastDay(fields.optional("bornOn")),
            fields.optional("littersWhelped").wholeNumber(COUNT),
            fields.optional("caesareans").wholeNumber(COUNT),
            fields.optional("missedPregnancies").wholeNumber(COUNT));
    List<EarlierCycle> earlierCycles = new ArrayList<>();
    for (Field entry : fields.optional("earlierCycles").entries(MOST_EARLIER_CYCLES)) {
      EarlierCycle cycle = earlierCycle(entry.members());
      if (cycle != null) {
        earlierCycles.add(cycle);
      }
    }
    List<Treatment> treatments = new ArrayList<>();
    for (Field entry : fields.optional("treatments").entries(MOST_TREATMENTS)) {
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
    Field bloodField = fields.required("firstBloodOn");
    LocalDate blood = season.anyPastDay(bloodField);
    Field ovulationField = fields.optional("ovulatedOn");
    LocalDate ovulated = season.anyPastDay(ovulationField);
    Field shiftField = fields.optional("dioestrusOn");
    LocalDate shifted = season.anyPastDay(shiftField);
    Field whelpingField = fields.optional("whelpedOn");
    LocalDate whelped = season.anyPastDay(whelpingField);
    Integer litter = fields.optional("litterSize").wholeNumber(PregnancyReader.PUPS);
    Field pregnantField = fields.optional("pregnant");
    Boolean pregnant = pregnantField.flag();
    fields.refuseOthers();
    if (Boolean.FALSE.equals(pregnant) && whelped != null) {
      pregnantField.refuse(
          ProblemCode.CONTRADICTION, "pregnant is false, yet whelpedOn is " + whelped);
    }
    if (blood == null) {
      return null;
    }
    if (firstBloodOn != null && !blood.isBefore(firstBloodOn)) {
      bloodField.refuse(
          ProblemCode.WRONG_ORDER,
          "firstBloodOn (" + blood + ") is not before this season's first blood",
          "Maybe this is the present season? It stands in firstBlood.");
    }
    refuseUnlessAfter(blood, ovulationField, ovulated, LONGEST_SEASON_DAYS);
    refuseUnlessAfter(blood, shiftField, shifted, LONGEST_SEASON_DAYS);
    refuseUnlessAfter(blood, whelpingField, whelped, LONGEST_SEASON_DAYS + LONGEST_PREGNANCY_DAYS);
    return new EarlierCycle(blood, ovulated, shifted, whelped, litter, pregnant);
  }

  /** Refuses a day before first blood, or too long after it. */
  private static void refuseUnlessAfter(
      LocalDate blood, Field field, @Nullable LocalDate day, int mostDays) {
    if (day != null && day.isBefore(blood)) {
      field.refuse(
          ProblemCode.WRONG_ORDER,
          field.name() + " (" + day + ") is before first blood (" + blood + ")");
    } else if (day != null && ChronoUnit.DAYS.between(blood, day) > mostDays) {
      field.refuse(
          ProblemCode.IMPLAUSIBLE_DATE,
          field.name()
              + " ("
              + day
              + ") is more than "
              + mostDays
              + " days after first blood ("
              + blood
              + ")");
    }
  }

  private @Nullable Treatment treatment(@Nullable Fields fields) {
    if (fields == null) {
      return null;
    }
    TreatmentKind kind = fields.required("kind").word(TreatmentKind.class);
    LocalDate on = season.anyPastDay(fields.required("on"));
    fields.refuseOthers();
    return kind == null || on == null ? null : new Treatment(kind, on);
  }
}
