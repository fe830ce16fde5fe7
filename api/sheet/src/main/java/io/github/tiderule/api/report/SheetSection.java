package io.github.tiderule.api.report;

import io.github.tiderule.api.report.text.Page;
import io.github.tiderule.api.report.text.SectionKind;
import io.github.tiderule.api.report.text.Telling;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.engine.advice.Amount;
import io.github.tiderule.engine.advice.DosesMade;
import io.github.tiderule.engine.advice.InseminationSheet;
import io.github.tiderule.engine.advice.InseminationSheet.Line;
import io.github.tiderule.engine.advice.SemenTemperature;
import io.github.tiderule.engine.advice.Warning;
import io.github.tiderule.rules.fact.semen.Route;
import io.github.tiderule.rules.sentence.Sentence;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * The sheet for the day of insemination: first what the semen is worth and what that asks for the
 * same day, then the checklist in the order it is done, then what the vet chooses from.
 */
final class SheetSection {

  private static final Texts TEXTS = Texts.ofReports();

  private static final String BOX = "[ ]";

  private final Page page;
  private final Telling telling;
  private final InseminationSheet sheet;

  private SheetSection(Page page, InseminationSheet sheet) {
    this.page = page;
    this.telling = page.telling();
    this.sheet = sheet;
  }

  static void write(Page page, @Nullable InseminationSheet sheet) {
    if (sheet != null) {
      new SheetSection(page, sheet).write();
    }
  }

  /** What the sheet says, so that the cautions need not say it again. */
  static Set<Sentence> said(@Nullable InseminationSheet sheet) {
    return sheet == null
        ? Set.of()
        : sheet.findings().stream().map(Warning::text).collect(Collectors.toSet());
  }

  private void write() {
    page.heading(SectionKind.SHEET);
    page.indented(
        2,
        (sheet.at() == null ? "" : telling.words().moment(sheet.at()) + ": ")
            + TEXTS.say(
                sheet.route() == Route.VAGINAL ? "sheet.semen.vagina" : "sheet.semen.cervix",
                sheet.semen()));
    sheet.notes().forEach(note -> page.indented(2, note));
    reckoning();
    if (!sheet.findings().isEmpty()) {
      page.indented(2, TEXTS.say("sheet.shows"));
      sheet.findings().forEach(finding -> page.hanging(4, "-", finding.text()));
    }
    if (!sheet.sameDay().isEmpty()) {
      page.indented(2, TEXTS.say("sheet.too-little"));
      boxes(sheet.sameDay());
      if (sheet.secondParcelBy() != null) {
        page.indented(
            4, TEXTS.say("sheet.second-parcel", telling.words().day(sheet.secondParcelBy())));
      }
    }
    SemenTemperature temperature = sheet.temperature();
    if (temperature != null) {
      page.hanging(2, TEXTS.say("sheet.temperature"), temperature.text());
    }
    Amount extender = sheet.extender();
    if (extender != null) {
      page.hanging(
          2,
          TEXTS.say("sheet.extender"),
          TEXTS.say("sheet.extender.how", words(extender), telling.say(extender.working())));
    }
    page.indented(2, TEXTS.say("sheet.checklist"));
    boxes(sheet.steps());
    if (!sheet.advice().isEmpty()) {
      page.indented(2, TEXTS.say("sheet.for-vet"));
      sheet.advice().forEach(line -> page.hanging(4, "-", line.text()));
    }
  }

  private void reckoning() {
    for (Amount line : sheet.arithmetic()) {
      page.hanging(
          2,
          TEXTS.say("sheet.line.what", telling.say(line.what())),
          TEXTS.say("sheet.line.how", telling.say(line.working()), words(line)));
    }
    for (DosesMade doses : sheet.doses()) {
      page.hanging(
          2,
          TEXTS.say(doses.route() == Route.VAGINAL ? "sheet.doses.vagina" : "sheet.doses.uterus"),
          TEXTS.say(
              "sheet.doses.say",
              TEXTS.say(
                  "sheet.doses.floor",
                  count(doses.least(), doses.most()),
                  million(doses.floorMillion())),
              doses.most() > 0
                  ? TEXTS.say(
                      "sheet.doses.usual",
                      count(doses.targetLeast(), doses.targetMost()),
                      million(doses.targetMillion()))
                  : TEXTS.say("sheet.doses.short", million(doses.shortMillion())),
              units(doses)));
    }
  }

  private static String units(DosesMade doses) {
    Integer units = doses.unitsForOne();
    return units == null ? "" : TEXTS.say("sheet.doses.units", units);
  }

  private static String count(int least, int most) {
    return least == most
        ? most == 0 ? TEXTS.say("sheet.doses.none") : Integer.toString(most)
        : least == 0
            ? TEXTS.say("sheet.doses.at-most", most)
            : TEXTS.say("sheet.doses.span", least, most);
  }

  private String million(double millions) {
    return telling.sayWithin(Amount.figures(millions, millions));
  }

  private String words(Amount amount) {
    return TEXTS.say(
        "sheet.amount", telling.sayWithin(amount.figures()), TEXTS.word("amount", amount.unit()));
  }

  private void boxes(List<Line> lines) {
    lines.forEach(
        line ->
            page.hanging(
                4,
                BOX,
                telling.say(line.text())
                    + (line.veterinaryAct() ? " " + TEXTS.say("sheet.vet") : "")));
  }
}
