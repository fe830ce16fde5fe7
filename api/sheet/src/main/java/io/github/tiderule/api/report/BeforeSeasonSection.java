package io.github.tiderule.api.report;

import io.github.tiderule.api.report.text.Page;
import io.github.tiderule.api.report.text.SectionKind;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.api.words.Words;
import io.github.tiderule.engine.advice.course.BeforeSeason;
import io.github.tiderule.engine.advice.course.BeforeSeason.Check;
import io.github.tiderule.engine.advice.course.BeforeSeason.NextSeason;
import io.github.tiderule.rules.conclusion.care.CheckState;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What to see to before a season: when it comes, what is due, what to ask, what is in order. */
final class BeforeSeasonSection {

  private static final Texts TEXTS = Texts.ofReports();

  private BeforeSeasonSection() {}

  static void write(Page page, @Nullable BeforeSeason before) {
    if (before == null) {
      return;
    }
    page.heading(SectionKind.BEFORE_SEASON);
    Words words = page.telling().words();
    NextSeason next = before.next();
    if (next == null) {
      page.indented(2, TEXTS.say("before.no-season"));
    } else {
      page.indented(
          2,
          TEXTS.say(
              "before.next",
              words.day(next.expected()),
              words.day(next.from()),
              words.day(next.to()),
              page.telling().say(next.text())));
    }
    checks(page, TEXTS.say("before.due"), "[ ]", of(before, CheckState.DUE));
    checks(page, TEXTS.say("before.ask"), "[ ]", of(before, CheckState.ASK));
    checks(page, TEXTS.say("before.done"), "[x]", of(before, CheckState.DONE));
  }

  private static List<Check> of(BeforeSeason before, CheckState state) {
    return before.checks().stream().filter(check -> check.state() == state).toList();
  }

  private static void checks(Page page, String label, String mark, List<Check> checks) {
    if (checks.isEmpty()) {
      return;
    }
    page.indented(2, label);
    for (Check check : checks) {
      String whose = "before.whose." + check.whose().word();
      String who = TEXTS.has(whose) ? TEXTS.say(whose) + " " : "";
      String vet = check.veterinaryAct() ? " " + TEXTS.say("sheet.vet") : "";
      String what =
          who.isEmpty() ? page.telling().say(check.text()) : page.telling().sayWithin(check.text());
      page.hanging(4, mark, who + what + vet);
    }
  }
}
