package io.github.tiderule.api.page;

import io.github.tiderule.api.access.Person;
import io.github.tiderule.api.page.frame.Frame;
import io.github.tiderule.api.page.frame.Templates;
import io.github.tiderule.api.page.plan.Documents;
import io.github.tiderule.api.page.plan.DueSoon;
import io.github.tiderule.api.page.plan.Kept;
import io.github.tiderule.api.page.plan.Seasons;
import io.github.tiderule.api.record.Cycle;
import io.github.tiderule.api.record.Female;
import io.github.tiderule.api.record.GivenAdvice;
import io.github.tiderule.api.record.Ledger;
import io.github.tiderule.api.record.table.Page;
import io.github.tiderule.api.service.http.Answer;
import io.github.tiderule.api.service.http.Call;
import io.github.tiderule.api.service.http.Route;
import io.github.tiderule.api.words.Texts;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** The first page: what is due today and tomorrow, and every female. */
public final class HomePages {

  private HomePages() {}

  /**
   * The page.
   *
   * @param due what is due today and tomorrow, over all females and not those of this page alone
   * @param next where the list goes on; absent at its end
   */
  public record Home(
      Frame frame,
      List<DueSoon.Item> due,
      List<Line> lines,
      boolean mayWrite,
      @Nullable String next) {}

  /**
   * One female.
   *
   * @param season key of her last season; absent before the first
   * @param said what to do, or that nothing is known
   * @param when of when that is
   */
  public record Line(
      String key,
      String name,
      boolean own,
      boolean mayEnter,
      @Nullable String season,
      String said,
      @Nullable String when) {}

  static List<Route> all() {
    return List.of(Route.page(Route.Method.GET, "/", Route.Need.ANYBODY, HomePages::home));
  }

  private static Answer home(Call call) {
    Frame frame = Frame.of(call, Texts.ofPages(Locale.ROOT).say("home.title"));
    Page.Wanted wanted = call.page();
    return call.read(
        ledger -> {
          Person person = call.person();
          Page<Female> page =
              ledger.females().seenBy(person.key(), person.role().isOfTheClinic(), wanted);
          List<Line> lines = new ArrayList<>();
          page.items().forEach(female -> lines.add(line(call, ledger, frame, female)));
          return Templates.page(
              "home",
              new Home(
                  frame,
                  DueSoon.of(ledger, person, call.now(), frame.texts(), frame.words()),
                  lines,
                  person.role().mayWrite(),
                  page.next()));
        });
  }

  private static Line line(Call call, Ledger ledger, Frame frame, Female female) {
    Seasons seasons = Seasons.of(ledger, female);
    Cycle last = seasons.last();
    Line line =
        new Line(
            female.key(),
            Documents.name(female, frame.texts()),
            female.owner().equals(call.person().key()),
            call.person().mayEnter(female),
            last == null ? null : last.key(),
            "",
            null);
    if (last == null) {
      return line;
    }
    List<GivenAdvice> given = ledger.advices().latest(last.key(), 1);
    if (given.isEmpty()) {
      return said(
          line,
          frame.say("home.new-season", Documents.firstBlood(last, frame.texts(), frame.words())),
          null);
    }
    Kept kept = Kept.of(given.get(0), frame.texts(), frame.words());
    String when = frame.words().moment(kept.asOf());
    return kept.validUntil().toInstant().isBefore(call.now())
        ? said(line, frame.say("home.stale", when), null)
        : said(line, kept.headline(), frame.say("home.last", when));
  }

  private static Line said(Line line, String said, @Nullable String when) {
    return new Line(
        line.key(), line.name(), line.own(), line.mayEnter(), line.season(), said, when);
  }
}
