package io.github.tiderule.api.fault;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.is;

import io.github.tiderule.api.record.Entry;
import io.github.tiderule.api.record.table.Page;
import io.github.tiderule.api.service.Desk;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The clock of the machine is set back and ahead under a running service. */
class ClockJumpsTest {

  /** Ends where it began. */
  private static final List<Duration> JUMPS =
      List.of(
          Duration.ofHours(-1),
          Duration.ofHours(2),
          Duration.ofDays(-3),
          Duration.ofDays(10),
          Duration.ofDays(-400),
          Duration.ofDays(2000),
          Duration.ofDays(-1607),
          Duration.ofHours(-1));

  @Test
  void nothingIsLostAndWhatIsImplausibleIsRefusedByName() {
    Notebook notebook = new Notebook(Desk.START);
    int refused = 0;
    try (Desk desk = Desk.open()) {
      Client client = new Client(desk.service.port());
      String season = notebook.season(client);
      for (Duration jump : JUMPS) {
        desk.clock.move(jump);
        for (Client.Got got :
            List.of(notebook.add(client, season), client.post(Notebook.advice(season), "{}"))) {
          if (got.status() == 201) {
            continue;
          }
          refused++;
          assertThat(got.mustBe(422).body(), containsString("implausible-date"));
        }
        client.get(Notebook.observations(season)).mustBe(200);
        client.get(Notebook.advice(season)).mustBe(200);
      }
      assertThat(desk.clock.instant(), is(Desk.START));
      notebook.add(client, season).mustBe(201);
      client.post(Notebook.advice(season), "{}").mustBe(201);
      List<Integer> numbers =
          desk
              .store
              .read(ledger -> ledger.entries().all(season, new Page.Wanted("", 100)))
              .items()
              .stream()
              .map(Entry::number)
              .toList();
      assertThat(numbers, is(numbers.stream().sorted().distinct().toList()));
      assertThat(desk.faults, is(List.of()));
      notebook.mustBeIn(desk.store);
    }
    assertThat(refused, greaterThan(0));
    Fault.CLOCK_JUMPS.seen(
        JUMPS.size()
            + " jumps between 400 days back and 2000 ahead, on a clock moved by hand: "
            + notebook.acknowledged()
            + " observations acknowledged, all there and in order; "
            + refused
            + " requests refused as implausible while the clock was years off; no fault of ours; all"
            + " well once the clock was right.");
  }
}
