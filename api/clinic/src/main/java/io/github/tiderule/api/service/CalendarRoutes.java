package io.github.tiderule.api.service;

import io.github.tiderule.api.calendar.CalendarFeed;
import io.github.tiderule.api.service.http.Answer;
import io.github.tiderule.api.service.http.Call;
import io.github.tiderule.api.service.http.Route;
import java.util.List;

/** The dates of a season, for calendars. */
final class CalendarRoutes {

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
          return Answer.text(
              CalendarFeed.MEDIA_TYPE + "; charset=utf-8",
              CalendarFeed.text(
                  SeasonDates.of(ledger, season.female(), season.cycle()).seenAt(call.now())));
        });
  }
}
