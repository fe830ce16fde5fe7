package io.github.tiderule.engine.plan;

import io.github.tiderule.engine.advice.Bred;
import io.github.tiderule.engine.advice.EggShare;
import io.github.tiderule.engine.days.DayTable;
import io.github.tiderule.engine.days.ScoredPlan;
import io.github.tiderule.engine.season.Dated;
import io.github.tiderule.engine.season.Season;
import io.github.tiderule.rules.conclusion.FindingKind;
import io.github.tiderule.rules.fact.observation.BreedingDone;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What the breedings already done are worth, whether another is, and what comes after. */
final class SoFar {

  /** From so many days after its first day on the scan is past. */
  private static final int DAYS_TO_SCAN = 7;

  private SoFar() {}

  /** Null where none is done. */
  static @Nullable Bred of(Dated dated, @Nullable Breeding breeding) {
    List<BreedingDone> done = dated.read().breedings();
    if (done.isEmpty()) {
      return null;
    }
    Season season = dated.season();
    DayTable table =
        breeding != null
            ? breeding.table()
            : DayTable.of(
                season.tools().eggs(),
                dated.density(),
                season.axis(),
                List.of(),
                season.semenPlan(),
                done,
                season.tools().value("planning.chilled-age-hours"));
    double met = table.alreadyMet();
    @Nullable ScoredPlan plan = breeding == null ? null : breeding.best().orElse(null);
    double another = plan == null ? 0 : Math.max(0, plan.mean() - met);
    boolean closed = dated.read().has(FindingKind.WHELPED, FindingKind.NOT_PREGNANT);
    String text =
        closed
            ? "Nothing of this season is left to time."
            : plan != null
                ? "The plan adds " + inHundred(another) + " in 100 to that."
                : noMore(dated, breeding) + " " + watch(dated);
    return new Bred(done.size(), new EggShare(met, table.alreadyMetP10()), another, text);
  }

  private static String noMore(Dated dated, @Nullable Breeding breeding) {
    if (breeding != null && !breeding.dosesLeft()) {
      return "Every dose there was is given.";
    }
    return breeding == null && dated.quantile(0.95).isAfter(dated.season().asOf())
        ? "None of the times given can be used for another."
        : "Another breeding would add less than "
            + inHundred(dated.season().tools().value("planning.further-share"))
            + " in 100: it is not worth it.";
  }

  private static String watch(Dated dated) {
    double scan = dated.season().tools().value("whelping.scan-after");
    Instant from = dated.quantile(0.5).plusSeconds(Math.round(scan * 86_400));
    String signs = "thirst, dullness, vomiting or discharge: a vet the same day.";
    if (from.plus(Duration.ofDays(DAYS_TO_SCAN)).isBefore(dated.season().asOf())) {
      return "Watch for " + signs;
    }
    return "Have her scanned from about "
        + dated.season().clock().day(from)
        + ", and until then and after watch for "
        + signs;
  }

  private static String inHundred(double share) {
    long whole = Math.round(100 * share);
    return whole == 0 ? "less than 1" : Long.toString(whole);
  }
}
