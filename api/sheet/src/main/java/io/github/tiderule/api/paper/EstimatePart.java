package io.github.tiderule.api.paper;

import io.github.tiderule.api.words.Texts;
import io.github.tiderule.api.words.Words;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.course.Ovulation;
import io.github.tiderule.engine.advice.course.Quantiles;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The posterior of LH peak and ovulation in figures. */
final class EstimatePart implements Part {

  private static final Texts TEXTS = Texts.ofReports();

  private final Advice advice;

  EstimatePart(Advice advice) {
    this.advice = advice;
  }

  @Override
  public void write(Html html, Room room) {
    html.heading(TEXTS.say("paper.estimate"));
    List<List<String>> rows = new ArrayList<>();
    Quantiles peak = advice.timing().lhPeak();
    if (peak != null) {
      rows.add(
          row(
              TEXTS.say("paper.estimate.peak"),
              peak.p05(),
              peak.p25(),
              peak.median(),
              peak.p75(),
              peak.p95()));
    }
    Ovulation one = advice.timing().ovulation();
    if (one != null) {
      rows.add(
          row(
              TEXTS.say("paper.estimate.ovulation"),
              one.p05(),
              one.p25(),
              one.median(),
              one.p75(),
              one.p95()));
    }
    if (rows.isEmpty()) {
      html.paragraph("", TEXTS.say("sure.nothing"));
      return;
    }
    html.table(
        TEXTS.say("paper.estimate.caption"),
        List.of("", "5 %", "25 %", "50 %", "75 %", "95 %"),
        rows,
        rows.size());
    if (one != null) {
      html.paragraph(
          "",
          TEXTS.say(
              one.confirmed() ? "paper.estimate.proven" : "paper.estimate.not-proven",
              hundredths(one.patterns().ordinary()),
              hundredths(one.patterns().plateau()),
              hundredths(one.patterns().noOvulation())));
    }
  }

  private static String hundredths(double probability) {
    return String.format(Locale.ROOT, "%.2f", probability);
  }

  private static List<String> row(String name, OffsetDateTime... times) {
    List<String> row = new ArrayList<>(List.of(name));
    for (OffsetDateTime time : times) {
      row.add(Words.REPORTS.about(time));
    }
    return row;
  }
}
