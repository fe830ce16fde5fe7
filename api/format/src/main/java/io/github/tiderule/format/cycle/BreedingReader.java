package io.github.tiderule.format.cycle;

import io.github.tiderule.format.node.Field;
import io.github.tiderule.format.node.Fields;
import io.github.tiderule.format.node.Range;
import io.github.tiderule.format.problem.ProblemCode;
import io.github.tiderule.rules.fact.semen.Availability;
import io.github.tiderule.rules.fact.semen.Dose;
import io.github.tiderule.rules.fact.semen.OrderTerms;
import io.github.tiderule.rules.fact.semen.Route;
import io.github.tiderule.rules.fact.semen.Semen;
import io.github.tiderule.rules.fact.semen.SemenPlan;
import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Reads what she is to be bred with. */
final class BreedingReader {

  private static final Range DOSES = Range.of(1, 4, "doses");
  private static final Range HOURS = Range.of(0, 240, "hours");
  private static final Range SPERM = Range.of(0, 1e11, "sperm");
  static final Range PERCENT = Range.of(0, 100, "%");
  private static final int MOST_SPANS = 100;
  private static final int MOST_HOLIDAYS = 100;

  private final Season season;

  private BreedingReader(Season season) {
    this.season = season;
  }

  /**
   * The plan; natural mating without limit when the file says nothing.
   *
   * @param described the kind of semen the file describes elsewhere, meant where none is named
   */
  static SemenPlan read(@Nullable Fields fields, @Nullable Semen described, Season season) {
    if (fields != null) {
      return new BreedingReader(season).semenPlan(fields, described);
    }
    return described == null
        ? SemenPlan.naturalUnlimited()
        : new SemenPlan(
            described, Route.usualFor(described), null, null, null, null, List.of(), null);
  }

  private SemenPlan semenPlan(Fields fields, @Nullable Semen described) {
    Semen saidSemen = fields.optional("semen").word(Semen.class);
    Route saidRoute = fields.optional("route").word(Route.class);
    Integer doses = fields.optional("doses").wholeNumber(DOSES);
    Double hoursBetween = fields.optional("hoursBetween").number(HOURS);
    Double chilledAgeHours = fields.optional("chilledAgeHours").number(HOURS);
    Dose dose = dose(fields.optional("dose").members());
    List<Availability> available = available(fields.optional("available"));
    OrderTerms order = order(fields.optional("order").members());
    Double travelHours = fields.optional("travelHours").number(HOURS);
    fields.refuseOthers();
    Semen usual = described == null ? Semen.usualFor(saidRoute) : described;
    Semen semen = saidSemen == null ? usual : saidSemen;
    Route route = saidRoute == null ? Route.usualFor(semen) : saidRoute;
    return new SemenPlan(
        semen, route, doses, hoursBetween, chilledAgeHours, dose, available, order, travelHours);
  }

  private static @Nullable Dose dose(@Nullable Fields fields) {
    if (fields == null) {
      return null;
    }
    Dose dose =
        new Dose(
            fields.optional("totalSperm").number(SPERM),
            fields.optional("progressivelyMotilePercent").number(PERCENT),
            fields.optional("normalPercent").number(PERCENT));
    fields.refuseOthers();
    return dose;
  }

  private List<Availability> available(Field field) {
    List<Availability> spans = new ArrayList<>();
    for (Field entry : field.entries(MOST_SPANS)) {
      Fields fields = entry.members();
      if (fields == null) {
        continue;
      }
      Field fromField = fields.required("from");
      Instant from = season.anyInstant(fromField);
      Instant to = season.anyInstant(fields.required("to"));
      fields.refuseOthers();
      if (from == null || to == null) {
        continue;
      }
      if (from.isBefore(to)) {
        spans.add(new Availability(from, to));
      } else {
        fromField.refuse(
            ProblemCode.WRONG_ORDER,
            "from (" + season.words(from) + ") is not before to (" + season.words(to) + ")");
      }
    }
    return spans;
  }

  private @Nullable OrderTerms order(@Nullable Fields fields) {
    if (fields == null) {
      return null;
    }
    LocalTime cutOff = fields.optional("cutOff").time();
    Double transitHours = fields.optional("transitHours").number(HOURS);
    List<DayOfWeek> noDeliveryOn = LaboratoryReader.weekdays(fields.optional("noDeliveryOn"));
    List<LocalDate> holidays = new ArrayList<>();
    for (Field entry : fields.optional("holidays").entries(MOST_HOLIDAYS)) {
      LocalDate day = season.anyDay(entry);
      if (day != null) {
        holidays.add(day);
      }
    }
    List<DayOfWeek> collectionOn = LaboratoryReader.weekdays(fields.optional("collectionOn"));
    fields.refuseOthers();
    return new OrderTerms(cutOff, transitHours, noDeliveryOn, holidays, collectionOn);
  }
}
