package io.github.tiderule.format.cycle;

import io.github.tiderule.engine.validation.Limits;
import io.github.tiderule.format.node.Field;
import io.github.tiderule.format.node.Fields;
import io.github.tiderule.rules.fact.assay.LaboratoryHours;
import java.time.DayOfWeek;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Reads when the laboratory works. */
final class LaboratoryReader {

  private static final int DAYS_OF_THE_WEEK = 7;

  private LaboratoryReader() {}

  static LaboratoryHours read(@Nullable Fields fields) {
    if (fields == null) {
      return LaboratoryHours.unknown();
    }
    Double turnaround = fields.optional("turnaroundHours").number(Limits.TURNAROUND);
    List<DayOfWeek> opensOn = weekdays(fields.optional("opensOn"));
    Boolean reachable = fields.optional("reachable").flag();
    fields.refuseOthers();
    return new LaboratoryHours(turnaround, opensOn, reachable);
  }

  static List<DayOfWeek> weekdays(Field field) {
    List<DayOfWeek> days = new ArrayList<>();
    for (Field entry : field.entries(DAYS_OF_THE_WEEK)) {
      DayOfWeek day = entry.constant(DayOfWeek.class);
      if (day != null) {
        days.add(day);
      }
    }
    return days;
  }
}
