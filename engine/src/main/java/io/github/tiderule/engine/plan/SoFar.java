package io.github.tiderule.engine.plan;

import io.github.tiderule.engine.advice.Bred;
import io.github.tiderule.engine.advice.EggShare;
import io.github.tiderule.engine.days.DayTable;
import io.github.tiderule.engine.days.ScoredPlan;
import io.github.tiderule.engine.season.Clock;
import io.github.tiderule.engine.season.Dated;
import io.github.tiderule.engine.season.Season;
import io.github.tiderule.rules.conclusion.FindingKind;
import io.github.tiderule.rules.fact.observation.BreedingDone;
import io.github.tiderule.rules.sentence.Sentence;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What the breedings already done are worth, whether another is, and what comes after. */
final class SoFar {

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
    Sentence text =
        closed
            ? Sentence.of("Nothing of this season is left to time.")
            : open(dated)
                ? Sentence.of(
                    "When she ovulates is open, and so is what that counts for: the next value tells"
                        + " whether she is bred again.")
                : plan != null
                    ? adds(another)
                    : scanned(dated)
                        ? watch(dated)
                        : Sentence.of("{} {}", noMore(dated, breeding), watch(dated));
    return new Bred(done.size(), new EggShare(met, table.alreadyMetP10()), another, text);
  }

  /** Whether what her values do leaves her days open, so that nothing done can be judged yet. */
  private static boolean open(Dated dated) {
    return !scanned(dated) && dated.read().open();
  }

  private static Sentence noMore(Dated dated, @Nullable Breeding breeding) {
    if (breeding != null && !breeding.dosesLeft()) {
      return Sentence.of("Every dose there was is given.");
    }
    return breeding == null && !dated.past()
        ? Sentence.of("None of the times given can be used for another.")
        : dated
            .season()
            .tools()
            .say()
            .that(
                "Another breeding would add less than {planning.further-share:percent:whole} in 100:"
                    + " it is not worth it.");
  }

  private static Sentence watch(Dated dated) {
    return scanned(dated)
        ? Sentence.of("Watch for thirst, dullness, vomiting or discharge: a vet the same day.")
        : Sentence.of(
            "Have her scanned from about {}, and until then and after watch for thirst, dullness,"
                + " vomiting or discharge: a vet the same day.",
            dated.season().clock().day(scanFrom(dated)));
  }

  /** Whether the days of a first scan are behind her, and with them all talk of breeding. */
  private static boolean scanned(Dated dated) {
    Duration open = Clock.ofDays(dated.season().tools().value("planning.scan-days"));
    return scanFrom(dated).plus(open).isBefore(dated.season().asOf());
  }

  private static Instant scanFrom(Dated dated) {
    return dated
        .quantile(0.5)
        .plus(Clock.ofDays(dated.season().tools().value("whelping.scan-after")));
  }

  private static Sentence adds(double share) {
    long whole = Math.round(100 * share);
    return whole == 0
        ? Sentence.of("The plan adds less than 1 in 100 to that.")
        : Sentence.of("The plan adds {} in 100 to that.", whole);
  }
}
