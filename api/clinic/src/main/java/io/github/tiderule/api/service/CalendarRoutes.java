package io.github.tiderule.api.service;

import io.github.tiderule.api.calendar.AdvisedDates;
import io.github.tiderule.api.calendar.CalendarFeed;
import io.github.tiderule.api.record.Female;
import io.github.tiderule.api.record.GivenAdvice;
import io.github.tiderule.api.record.Ledger;
import io.github.tiderule.api.record.table.Page;
import io.github.tiderule.api.service.http.Answer;
import io.github.tiderule.api.service.http.Call;
import io.github.tiderule.api.service.http.Route;
import io.github.tiderule.format.node.Node;
import io.github.tiderule.format.node.NodeReader;
import io.github.tiderule.format.problem.Problems;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The dates of a season, for calendars. */
final class CalendarRoutes {

  private static final int AT_A_TIME = 50;

  private CalendarRoutes() {}

  static List<Route> all() {
    return List.of(
        new Route(
            Route.Method.GET,
            "/v1/cycles/{cycle}/calendar.ics",
            Route.Need.ANYBODY,
            CalendarRoutes::calendar));
  }

  private static Answer calendar(Call call) {
    return call.read(
        ledger -> {
          Known.Season season = new Known(call, ledger).season();
          String key = season.cycle().key();
          return Answer.text(
              CalendarFeed.MEDIA_TYPE + "; charset=utf-8",
              CalendarFeed.text(key, advice(ledger, key, name(season.female())), call.now()));
        });
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
