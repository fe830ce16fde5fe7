package io.github.tiderule.api.report;

import io.github.tiderule.engine.advice.BeforeSeason;
import io.github.tiderule.engine.advice.BeforeSeason.Check;
import io.github.tiderule.engine.advice.BeforeSeason.NextSeason;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What to see to before a season: when it comes, what is due, what to ask, what is in order. */
final class BeforeSeasonSection {

  private BeforeSeasonSection() {}

  static void write(Page page, @Nullable BeforeSeason before) {
    if (before == null) {
      return;
    }
    page.heading(Section.BEFORE_SEASON);
    NextSeason next = before.next();
    if (next == null) {
      page.indented(2, "No season of hers is on file, so the next one cannot be told.");
    } else {
      page.indented(
          2,
          "Next season about "
              + LocalWords.day(next.expected())
              + ", between "
              + LocalWords.day(next.from())
              + " and "
              + LocalWords.day(next.to())
              + ". "
              + next.text());
    }
    checks(page, "Due:", "[ ]", of(before, "due"));
    checks(page, "To ask:", "[ ]", of(before, "ask"));
    checks(page, "In order:", "[x]", of(before, "done"));
  }

  private static List<Check> of(BeforeSeason before, String state) {
    return before.checks().stream().filter(check -> check.state().equals(state)).toList();
  }

  private static void checks(Page page, String label, String mark, List<Check> checks) {
    if (checks.isEmpty()) {
      return;
    }
    page.indented(2, label);
    for (Check check : checks) {
      String who =
          switch (check.whose()) {
            case "female" -> "She: ";
            case "stud" -> "He: ";
            default -> "";
          };
      page.hanging(4, mark, who + check.text() + (check.veterinaryAct() ? " (vet)" : ""));
    }
  }
}
