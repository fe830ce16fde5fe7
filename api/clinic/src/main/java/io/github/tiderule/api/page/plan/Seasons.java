package io.github.tiderule.api.page.plan;

import io.github.tiderule.api.record.Cycle;
import io.github.tiderule.api.record.Female;
import io.github.tiderule.api.record.Ledger;
import io.github.tiderule.api.record.table.Page;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The seasons of a female, in the order they were added. */
public record Seasons(List<Cycle> all) {

  /** All that are on record. */
  public static Seasons of(Ledger ledger, Female female) {
    List<Cycle> all = new ArrayList<>();
    Page.Wanted wanted = Page.Wanted.FIRST;
    while (true) {
      Page<Cycle> page = ledger.cycles().of(female.key(), wanted);
      all.addAll(page.items());
      if (page.next() == null) {
        return new Seasons(List.copyOf(all));
      }
      wanted = new Page.Wanted(page.next(), wanted.limit());
    }
  }

  /** The one added last. */
  public @Nullable Cycle last() {
    return all.isEmpty() ? null : all.get(all.size() - 1);
  }
}
