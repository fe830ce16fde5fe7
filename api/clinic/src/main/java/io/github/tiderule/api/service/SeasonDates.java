package io.github.tiderule.api.service;

import io.github.tiderule.api.calendar.AdvisedDates;
import io.github.tiderule.api.calendar.CalendarFeed;
import io.github.tiderule.api.record.Cycle;
import io.github.tiderule.api.record.Female;
import io.github.tiderule.api.record.GivenAdvice;
import io.github.tiderule.api.record.Ledger;
import io.github.tiderule.api.record.table.Page;
import io.github.tiderule.format.node.Node;
import io.github.tiderule.format.node.NodeReader;
import io.github.tiderule.format.problem.Problems;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What the advice given on a season puts on dates, one after the other. */
public final class SeasonDates {

  private static final int AT_A_TIME = 50;

  private SeasonDates() {}

  /** The dates of a season, with her name as it is on record. */
  public static CalendarFeed.Season of(Ledger ledger, Female female, Cycle cycle) {
    return new CalendarFeed.Season(
        cycle.key(), advice(ledger, cycle.key(), name(female)), cycle.createdAt());
  }

  /** As she is on record: a season may lie ahead of the clock, and her history with it. */
  private static String name(Female female) {
    Node.Members her =
        (Node.Members) NodeReader.read(female.document(), new Problems()).orElseThrow();
    return CalendarFeed.nameOf(her.text("name"), her.text("id"));
  }

  private static List<AdvisedDates> advice(Ledger ledger, String cycle, String name) {
    List<AdvisedDates> all = new ArrayList<>();
    @Nullable String after = Page.Wanted.FIRST.after();
    while (after != null) {
      Page<GivenAdvice> page = ledger.advices().of(cycle, new Page.Wanted(after, AT_A_TIME));
      page.items().forEach(given -> all.add(AdvisedDates.of(given.answer(), name)));
      after = page.next();
    }
    return all;
  }
}
