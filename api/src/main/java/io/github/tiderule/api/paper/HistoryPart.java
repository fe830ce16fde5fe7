package io.github.tiderule.api.paper;

import io.github.tiderule.api.report.LocalWords;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.rules.fact.Certainty;
import io.github.tiderule.rules.fact.EarlierCycle;
import io.github.tiderule.rules.fact.Female;
import io.github.tiderule.rules.fact.SemenPlan;
import io.github.tiderule.rules.fact.Treatment;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Who she is, what she went through, and the semen there is: only what was said. */
final class HistoryPart implements Part {

  private final CycleRecord cycle;

  HistoryPart(CycleRecord cycle) {
    this.cycle = cycle;
  }

  @Override
  public void write(Html html, Room room) {
    html.heading("History").paragraph("", sentence(female())).paragraph("", firstBlood());
    List<EarlierCycle> earlier = cycle.earlierCycles();
    if (!earlier.isEmpty()) {
      html.paragraph(
          "",
          "Earlier seasons: "
              + earlier.stream()
                  .skip(Math.max(0, earlier.size() - room.most(8, 6, 5, 4, 3)))
                  .map(HistoryPart::words)
                  .collect(Collectors.joining("; "))
              + ".");
    }
    if (!cycle.treatments().isEmpty()) {
      html.paragraph(
          "",
          "Treatments: "
              + cycle.treatments().stream()
                  .map(HistoryPart::words)
                  .collect(Collectors.joining("; "))
              + ".");
    }
    html.paragraph("", semen());
  }

  private List<String> female() {
    Female female = cycle.female();
    List<String> words = new ArrayList<>();
    add(words, "", female.breed(), "");
    add(words, "born ", female.bornOn() == null ? null : day(female.bornOn()), "");
    add(words, "", plain(female.bodyMassKg()), " kg");
    add(words, "litters whelped: ", female.littersWhelped(), "");
    add(words, "caesareans: ", female.caesareans(), "");
    add(words, "pregnancies missed: ", female.missedPregnancies(), "");
    return words;
  }

  private static String sentence(List<String> words) {
    return words.isEmpty() ? "Nothing was said of her." : String.join(", ", words) + ".";
  }

  private static void add(List<String> words, String before, @Nullable Object what, String after) {
    if (what != null) {
      words.add(before + what + after);
    }
  }

  private String firstBlood() {
    LocalDate on = cycle.firstBlood().on();
    Certainty certainty = cycle.firstBlood().certainty();
    return on == null
        ? "The day of first blood is not known."
        : "First blood: " + day(on) + ", " + certainty.word() + ".";
  }

  private static String words(EarlierCycle earlier) {
    LocalDate ovulated = earlier.ovulatedOn();
    return "first blood "
        + day(earlier.firstBloodOn())
        + (ovulated == null ? "" : ", ovulated " + day(ovulated));
  }

  private static String words(Treatment treatment) {
    return treatment.kind().word() + " on " + day(treatment.on());
  }

  private String semen() {
    SemenPlan plan = cycle.semenPlan();
    List<String> words = new ArrayList<>();
    words.add("Semen: " + plan.semen().word() + ", route " + plan.route().word());
    add(words, "doses: ", plan.doses(), "");
    add(words, "at least ", plain(plan.hoursBetween()), " hours between");
    add(words, "age when used ", plain(plan.chilledAgeHours()), " hours");
    return sentence(words);
  }

  private static String day(LocalDate day) {
    return LocalWords.day(day);
  }

  private static @Nullable String plain(@Nullable Double number) {
    return number == null ? null : BigDecimal.valueOf(number).stripTrailingZeros().toPlainString();
  }
}
