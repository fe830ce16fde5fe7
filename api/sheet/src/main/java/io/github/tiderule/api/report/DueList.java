package io.github.tiderule.api.report;

import io.github.tiderule.api.report.text.Telling;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.api.words.Words;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.Commitment;
import io.github.tiderule.engine.advice.NextTest;
import io.github.tiderule.engine.advice.Plan;
import io.github.tiderule.engine.advice.course.Milestone;
import io.github.tiderule.engine.advice.course.Pregnancy;
import io.github.tiderule.engine.advice.course.Whelping;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What is due by a date: tests, orders, bookings, journeys, scans and pups; nothing past. */
final class DueList {

  private static final Texts TEXTS = Texts.ofReports();

  private final Advice advice;
  private final Telling telling;
  private final Words words;
  private final List<Due> items = new ArrayList<>();

  private DueList(Advice advice, Telling telling) {
    this.advice = advice;
    this.telling = telling;
    this.words = telling.words();
  }

  /** What an answer asks for, soonest first. */
  static List<Due> of(Advice advice, Telling telling) {
    DueList list = new DueList(advice, telling);
    list.test(advice.testing().next());
    list.commitments(advice.breeding().plan());
    list.milestones(advice.course().pregnancy());
    list.pups(advice.course().whelping());
    list.items.sort(Comparator.comparing(Due::at));
    return list.items;
  }

  private void test(@Nullable NextTest test) {
    if (test != null) {
      items.add(
          new Due(
              test.at(),
              words.shortMoment(test.at()),
              TEXTS.say(
                  "screen.due.test",
                  TEXTS.word("test.kind", test.kind()),
                  words.shortMoment(test.resultAt()))));
    }
  }

  private void commitments(@Nullable Plan plan) {
    if (plan == null) {
      return;
    }
    for (Commitment commitment : plan.commitments()) {
      boolean now = !commitment.by().isAfter(advice.asOf());
      items.add(
          new Due(
              commitment.by(),
              now
                  ? TEXTS.say("screen.due.now")
                  : TEXTS.say("screen.due.by", words.shortMoment(commitment.by())),
              telling.say(commitment.text())));
    }
  }

  private void milestones(@Nullable Pregnancy pregnancy) {
    if (pregnancy == null) {
      return;
    }
    for (Milestone milestone : PregnancySection.ahead(pregnancy, advice.asOf())) {
      items.add(
          new Due(
              milestone.from(),
              span(milestone.from(), milestone.to()),
              telling.capital(milestone.title())));
    }
  }

  private void pups(@Nullable Whelping whelping) {
    if (whelping == null || whelping.p95().isBefore(advice.asOf())) {
      return;
    }
    if (whelping.median().isBefore(advice.asOf())) {
      items.add(
          new Due(
              whelping.p95(),
              TEXTS.say("screen.due.by", words.shortDay(whelping.p95().toLocalDate())),
              TEXTS.say("screen.due.pups-now")));
    } else {
      items.add(
          new Due(
              whelping.median(),
              words.shortDay(whelping.median().toLocalDate()),
              TEXTS.say(
                  advice.breeding().bred() == null ? "screen.due.pups-if" : "screen.due.pups",
                  span(whelping.p05(), whelping.p95()))));
    }
  }

  private String span(OffsetDateTime from, OffsetDateTime to) {
    return words.days(from.toLocalDate(), to.toLocalDate());
  }
}
