package io.github.tiderule.engine.advice.reasoning;

import io.github.tiderule.rules.conclusion.care.Thumb;
import io.github.tiderule.rules.sentence.Sentence;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a rule of thumb makes of the season: weak evidence, told beside the plan.
 *
 * @param text what it goes by
 * @param from the day it counts from; absent where it says nothing yet
 * @param days the days it gives; none where it says nothing yet
 * @param observations what it counts from, by id; none where that is no observation
 * @param but what limits it here; absent where nothing does
 * @param rule the id of the rule that tells it
 */
public record DayCount(
    Thumb kind,
    Sentence text,
    @Nullable LocalDate from,
    List<LocalDate> days,
    List<String> observations,
    @Nullable Sentence but,
    String rule,
    List<String> sources) {

  public DayCount {
    days = List.copyOf(days);
    observations = List.copyOf(observations);
    sources = List.copyOf(sources);
  }
}
