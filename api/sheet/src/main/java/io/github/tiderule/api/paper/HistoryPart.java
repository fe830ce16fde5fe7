package io.github.tiderule.api.paper;

import io.github.tiderule.api.words.Texts;
import io.github.tiderule.api.words.Words;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.rules.fact.Certainty;
import io.github.tiderule.rules.fact.EarlierCycle;
import io.github.tiderule.rules.fact.Female;
import io.github.tiderule.rules.fact.Treatment;
import io.github.tiderule.rules.fact.semen.SemenPlan;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Who she is, what she went through, and the semen there is: only what was said. */
final class HistoryPart implements Part {

  private static final Texts TEXTS = Texts.ofReports();

  private final CycleRecord cycle;

  HistoryPart(CycleRecord cycle) {
    this.cycle = cycle;
  }

  @Override
  public void write(Html html, Room room) {
    html.heading(TEXTS.say("paper.history"))
        .paragraph("", sentence(female()))
        .paragraph("", firstBlood());
    List<EarlierCycle> earlier = cycle.earlierCycles();
    if (!earlier.isEmpty()) {
      html.paragraph(
          "",
          TEXTS.say(
              "paper.history.earlier",
              earlier.stream()
                  .skip(Math.max(0, earlier.size() - room.most(8, 6, 5, 4, 3)))
                  .map(HistoryPart::words)
                  .collect(Collectors.joining("; "))));
    }
    if (!cycle.treatments().isEmpty()) {
      html.paragraph(
          "",
          TEXTS.say(
              "paper.history.treatments",
              cycle.treatments().stream()
                  .map(HistoryPart::words)
                  .collect(Collectors.joining("; "))));
    }
    html.paragraph("", semen());
  }

  private List<String> female() {
    Female female = cycle.female();
    List<String> words = new ArrayList<>();
    add(words, "breed", female.breed());
    add(words, "born", female.bornOn() == null ? null : day(female.bornOn()));
    add(words, "mass", plain(female.bodyMassKg()));
    add(words, "litters", female.littersWhelped());
    add(words, "caesareans", female.caesareans());
    add(words, "missed", female.missedPregnancies());
    return words;
  }

  private static String sentence(List<String> words) {
    return words.isEmpty() ? TEXTS.say("paper.history.nothing") : String.join(", ", words) + ".";
  }

  private static void add(List<String> words, String name, @Nullable Object what) {
    if (what != null) {
      words.add(TEXTS.say("paper.history." + name, what));
    }
  }

  private String firstBlood() {
    LocalDate on = cycle.firstBlood().on();
    Certainty certainty = cycle.firstBlood().certainty();
    return on == null
        ? TEXTS.say("paper.history.blood-unknown")
        : TEXTS.say("paper.history.blood", day(on), certainty.word());
  }

  private static String words(EarlierCycle earlier) {
    LocalDate ovulated = earlier.ovulatedOn();
    String blood = day(earlier.firstBloodOn());
    String season =
        ovulated == null
            ? TEXTS.say("paper.history.season", blood)
            : TEXTS.say("paper.history.season.ovulated", blood, day(ovulated));
    return earlier.kind() == null
        ? season
        : season + ", " + TEXTS.word("paper.history.season", earlier.kind().word());
  }

  private static String words(Treatment treatment) {
    List<String> words = new ArrayList<>();
    words.add(TEXTS.say("paper.history.treatment", treatment.kind().word(), day(treatment.on())));
    if (treatment.form() != null) {
      words.add(treatment.form().word());
    }
    if (treatment.purpose() != null) {
      words.add(TEXTS.say("paper.history.treatment.for", treatment.purpose().word()));
    }
    if (treatment.removedOn() != null) {
      words.add(TEXTS.say("paper.history.treatment.out", day(treatment.removedOn())));
    }
    return String.join(", ", words);
  }

  private String semen() {
    SemenPlan plan = cycle.semenPlan();
    List<String> words = new ArrayList<>();
    words.add(TEXTS.say("paper.history.semen", plan.semen().word(), plan.route().word()));
    add(words, "doses", plan.doses());
    add(words, "between", plain(plan.hoursBetween()));
    add(words, "age", plain(plan.chilledAgeHours()));
    return sentence(words);
  }

  private static String day(LocalDate day) {
    return Words.REPORTS.day(day);
  }

  private static @Nullable String plain(@Nullable Double number) {
    return number == null ? null : BigDecimal.valueOf(number).stripTrailingZeros().toPlainString();
  }
}
