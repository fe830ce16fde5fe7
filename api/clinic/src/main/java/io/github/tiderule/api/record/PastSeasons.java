package io.github.tiderule.api.record;

import io.github.tiderule.api.record.table.Page;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.WhelpedSeason;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.course.LookBack;
import io.github.tiderule.format.cycle.CycleText;
import io.github.tiderule.format.cycle.Reading;
import io.github.tiderule.format.node.Node;
import io.github.tiderule.format.node.NodeReader;
import io.github.tiderule.format.problem.Problems;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * The seasons of a record whose whelping is known, to be held beside their forecasts.
 *
 * @param whelped the latest whelping first
 * @param others how many seasons have no whelping
 */
public record PastSeasons(List<Past> whelped, int others) {

  /**
   * A season that ended in a whelping.
   *
   * @param earlier the seasons of the female, of which those before this one count
   * @param whelpedOn as {@code 2027-03-19}
   */
  public record Past(EarlierSeasons earlier, Cycle cycle, List<Entry> current, String whelpedOn) {

    public Past {
      current = List.copyOf(current);
    }
  }

  /**
   * Whelpings beside their forecasts.
   *
   * @param keys of the seasons, in their order
   * @param leftOut how many whelpings are older than those compared
   * @param others how many seasons have no whelping to compare
   */
  public record Compared(List<String> keys, List<WhelpedSeason> seasons, int leftOut, int others) {

    public Compared {
      keys = List.copyOf(keys);
      seasons = List.copyOf(seasons);
    }
  }

  public PastSeasons {
    whelped = List.copyOf(whelped);
  }

  /**
   * Reads them.
   *
   * @param females gives the females in question, part by part
   */
  public static PastSeasons of(Ledger ledger, Function<Page.Wanted, Page<Female>> females) {
    List<Past> whelped = new ArrayList<>();
    int others = 0;
    Page.Wanted wanted = Page.Wanted.FIRST;
    while (true) {
      Page<Female> page = females.apply(wanted);
      for (Female female : page.items()) {
        @Nullable EarlierSeasons earlier = null;
        for (Cycle cycle : ledger.cycles().all(female.key())) {
          @Nullable String on = whelpedOn(cycle);
          if (on == null) {
            others++;
          } else {
            earlier = earlier == null ? EarlierSeasons.of(ledger, female) : earlier;
            whelped.add(new Past(earlier, cycle, ledger.entries().current(cycle.key()), on));
          }
        }
      }
      if (page.next() == null) {
        whelped.sort(Comparator.comparing(Past::whelpedOn).reversed());
        return new PastSeasons(whelped, others);
      }
      wanted = new Page.Wanted(page.next(), wanted.limit());
    }
  }

  private static @Nullable String whelpedOn(Cycle cycle) {
    Node season = NodeReader.read(cycle.document(), new Problems()).orElseThrow();
    Node.@Nullable Members outcome = ((Node.Members) season).members("outcome");
    return outcome == null ? null : outcome.text("whelpedOn");
  }

  /**
   * Works every whelping out anew.
   *
   * @param most of how many, the latest first
   * @param now the present moment
   */
  public Compared compared(int most, Instant now, Function<CycleRecord, Advice> advise) {
    int taken = Math.min(most, whelped.size());
    int without = others;
    List<String> keys = new ArrayList<>();
    List<WhelpedSeason> seasons = new ArrayList<>();
    for (Past past : whelped.subList(0, taken)) {
      CycleRecord cycle = read(past, now);
      LookBack back = advise.apply(cycle).course().lookBack();
      if (back == null) {
        without++;
      } else {
        keys.add(past.cycle().key());
        seasons.add(WhelpedSeason.of(cycle, back));
      }
    }
    return new Compared(keys, seasons, whelped.size() - taken, without);
  }

  private static CycleRecord read(Past past, Instant now) {
    String file = past.earlier().file(past.cycle().moment(now), past.cycle(), past.current());
    if (CycleText.read(file) instanceof Reading.Read read) {
      return read.cycle();
    }
    throw new IllegalStateException("the record holds a season that is no cycle file");
  }
}
