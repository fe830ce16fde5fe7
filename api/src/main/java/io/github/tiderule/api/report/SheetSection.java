package io.github.tiderule.api.report;

import io.github.tiderule.engine.advice.Amount;
import io.github.tiderule.engine.advice.DosesMade;
import io.github.tiderule.engine.advice.InseminationSheet;
import io.github.tiderule.engine.advice.InseminationSheet.Line;
import io.github.tiderule.engine.advice.SemenTemperature;
import io.github.tiderule.engine.advice.Warning;
import io.github.tiderule.engine.insemination.Span;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * The sheet for the day of insemination: first what the semen is worth and what that asks for the
 * same day, then the checklist in the order it is done, then what the vet chooses from.
 */
final class SheetSection {

  private static final String BOX = "[ ]";

  private final Page page;
  private final InseminationSheet sheet;

  private SheetSection(Page page, InseminationSheet sheet) {
    this.page = page;
    this.sheet = sheet;
  }

  static void write(Page page, @Nullable InseminationSheet sheet) {
    if (sheet != null) {
      new SheetSection(page, sheet).write();
    }
  }

  /** What the sheet says, so that the cautions need not say it again. */
  static Set<String> said(@Nullable InseminationSheet sheet) {
    return sheet == null
        ? Set.of()
        : sheet.findings().stream().map(Warning::text).collect(Collectors.toSet());
  }

  private void write() {
    page.heading(Section.SHEET);
    page.indented(
        2,
        (sheet.at() == null ? "" : LocalWords.moment(sheet.at()) + ": ")
            + sheet.semen()
            + " semen, "
            + (sheet.route().equals("vaginal") ? "into the vagina" : "through the cervix, by a vet")
            + ".");
    sheet.notes().forEach(note -> page.indented(2, note));
    reckoning();
    if (!sheet.findings().isEmpty()) {
      page.indented(2, "What it shows:");
      sheet.findings().forEach(finding -> page.hanging(4, "-", finding.text()));
    }
    if (!sheet.sameDay().isEmpty()) {
      page.indented(2, "Too little for a dose: do this today");
      boxes(sheet.sameDay());
      if (sheet.secondParcelBy() != null) {
        page.indented(
            4,
            "It has to be used by "
                + LocalWords.day(sheet.secondParcelBy())
                + "; later days are worth much less than the best one.");
      }
    }
    SemenTemperature temperature = sheet.temperature();
    if (temperature != null) {
      page.hanging(2, "Temperature:", temperature.text());
    }
    Amount extender = sheet.extender();
    if (extender != null) {
      page.hanging(
          2,
          "Extender to add:",
          words(extender)
              + " in all, slowly, at the semen's temperature ("
              + extender.working()
              + ").");
    }
    page.indented(2, "Checklist, in this order:");
    boxes(sheet.steps());
    if (!sheet.advice().isEmpty()) {
      page.indented(2, "For the vet to choose:");
      sheet.advice().forEach(line -> page.hanging(4, "-", line.text()));
    }
  }

  private void reckoning() {
    for (Amount line : sheet.arithmetic()) {
      page.hanging(2, line.what() + ":", line.working() + " = " + words(line));
    }
    for (DosesMade doses : sheet.doses()) {
      page.hanging(
          2,
          doses.route().equals("vaginal") ? "Doses for the vagina:" : "Doses for the uterus:",
          count(doses.least(), doses.most())
              + " of at least "
              + Span.words(doses.floorMillion())
              + " million"
              + (doses.most() > 0
                  ? "; "
                      + count(doses.targetLeast(), doses.targetMost())
                      + " of the usual "
                      + Span.words(doses.targetMillion())
                      + " million"
                  : "; " + Span.words(doses.shortMillion()) + " million short of one")
              + units(doses)
              + ".");
    }
  }

  private static String units(DosesMade doses) {
    Integer units = doses.unitsForOne();
    return units == null ? "" : "; one dose takes " + units + " like these";
  }

  private static String count(int least, int most) {
    return least == most
        ? most == 0 ? "none" : Integer.toString(most)
        : (least == 0 ? "at most " : least + " to ") + most;
  }

  private static String words(Amount amount) {
    return new Span(amount.least(), amount.most()).words() + " " + amount.unit();
  }

  private void boxes(List<Line> lines) {
    lines.forEach(
        line -> page.hanging(4, BOX, line.text() + (line.veterinaryAct() ? " (vet)" : "")));
  }
}
