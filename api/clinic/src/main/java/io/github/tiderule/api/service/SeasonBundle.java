package io.github.tiderule.api.service;

import io.github.tiderule.api.record.Change;
import io.github.tiderule.api.record.Entry;
import io.github.tiderule.api.record.Ledger;
import io.github.tiderule.api.service.http.Hand;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.format.cycle.CycleText;
import io.github.tiderule.format.fhir.FhirExport;
import io.github.tiderule.format.json.Layout;
import io.github.tiderule.rules.fact.observation.Progesterone;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;

/** The results of a season of the record as a FHIR Bundle. */
public final class SeasonBundle {

  private SeasonBundle() {}

  /** The Bundle, with what was corrected and taken back marked so. */
  public static String text(Hand hand, Ledger ledger, Known.Season season, Layout layout) {
    String key = season.cycle().key();
    CycleRecord cycle = CycleCheck.season(hand, ledger, season);
    Set<String> corrected = new TreeSet<>();
    for (Entry entry : ledger.entries().current(key)) {
      if (entry.change() == Change.CORRECTED) {
        corrected.add(entry.observation());
      }
    }
    return FhirExport.text(cycle, key, corrected, takenBack(hand, ledger, season), layout);
  }

  /** What was taken back, as it last read. */
  private static List<Progesterone> takenBack(Hand hand, Ledger ledger, Known.Season season) {
    String key = season.cycle().key();
    List<String> last =
        ledger.entries().ids(key).stream()
            .sorted()
            .map(id -> ledger.entries().history(key, id))
            .filter(history -> history.get(history.size() - 1).change() == Change.RETRACTED)
            .flatMap(
                history ->
                    history.stream()
                        .map(Entry::document)
                        .filter(Objects::nonNull)
                        .reduce((one, other) -> other)
                        .stream())
            .toList();
    String file =
        CycleText.of(
            season.cycle().moment(hand.now()),
            season.female().document(),
            season.cycle().document(),
            last);
    return CycleCheck.read(file, "/observations", "").observations().stream()
        .filter(Progesterone.class::isInstance)
        .map(Progesterone.class::cast)
        .toList();
  }
}
