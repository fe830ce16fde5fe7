package io.github.tiderule.cases.odd;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.lessThanOrEqualTo;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import io.github.tiderule.cases.Nightly;
import io.github.tiderule.engine.Tiderule;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * A few seasons of every odd kind, drawn anew by the same seed each time; {@code odd-seasons.md}
 * has many. A bound here is what many seasons show of the engine as it is, and {@link #LUCK}
 * standard errors of so few; it is to fall with what the engine learns, never to rise. Every night,
 * with TIDERULE_NIGHTLY=true, as many are asked about as the report has, and none of its shares may
 * be worse than it says.
 */
class OddSeasonsTest {

  private static final Path REPORT = Path.of("report/odd-seasons.csv");
  private static final int FEW = 6;
  private static final long SEED = 1;
  private static final double LUCK = 2.33;

  /** The report has four decimals. */
  private static final double PRINTED = 1e-4;

  /** Shares of all odd seasons together as the report has them. */
  private static final double OVER = 0.013;

  private static final double OUTSIDE = 0.018;
  private static final double FALSE_PROOF = 0.007;
  private static final double HARMFUL_SLIP = 0.018;
  private static final double IN_VAIN = 0.037;
  private static final double ALARMED = 0.067;

  private static final List<KindScore> SCORES = new ArrayList<>();

  @BeforeAll
  static void ask() throws IOException {
    OddStudy study = new OddStudy(Tiderule.create(), SEED);
    int seasons = Nightly.is() ? Integer.parseInt(reported(Kind.ORDINARY, "seasons")) : FEW;
    for (Kind kind : Kind.values()) {
      SCORES.add(study.score(kind, seasons));
    }
  }

  @Test
  void isSeldomOverWhileHalfHerEggsAreLeft() {
    holds(Verdict::over, OVER);
  }

  @Test
  void isSeldomFirmBesideTheTruth() {
    holds(Verdict::confident, OUTSIDE);
  }

  @Test
  void seldomProvesWhatIsNotSo() {
    holds(Verdict::falseProof, FALSE_PROOF);
  }

  @Test
  void seldomLetsASlipPass() {
    holds(Verdict::harmfulSlip, HARMFUL_SLIP);
  }

  @Test
  void seldomSpendsTheOnlyDoseInVain() {
    holds(Verdict::doseInVain, IN_VAIN);
  }

  @Test
  void seldomDoubtsAnOrdinarySeason() {
    KindScore ordinary = SCORES.get(List.of(Kind.values()).indexOf(Kind.ORDINARY));
    assertThat(
        ordinary.share(Verdict::doubt),
        lessThanOrEqualTo(ALARMED + luck(ALARMED, ordinary.count())));
  }

  @Test
  void sameSeedSameSeasons() {
    OddSeason once = Keeping.of(SEED, Kind.PLATEAU_HIGH, 3);
    OddSeason again = Keeping.of(SEED, Kind.PLATEAU_HIGH, 3);
    assertThat(again.asked(), equalTo(once.asked()));
  }

  @Test
  void noKindFaresWorseThanReported() throws IOException {
    assumeTrue(Nightly.is());
    Map<String, Predicate<Verdict>> columns = new LinkedHashMap<>();
    columns.put("over", Verdict::over);
    columns.put("interval", Verdict::confident);
    columns.put("falseProof", Verdict::falseProof);
    columns.put("slip", Verdict::harmfulSlip);
    columns.put("overAtFirst", Verdict::overAtOnce);
    columns.put("intervalAtFirst", Verdict::firmOutside);
    columns.put("slipAtFirst", Verdict::slipUnnoticed);
    columns.put("inVain", Verdict::doseInVain);
    columns.put("inVainAtFirst", Verdict::inVainAtFirst);
    for (KindScore score : SCORES) {
      for (Map.Entry<String, Predicate<Verdict>> column : columns.entrySet()) {
        double reported = Double.parseDouble(reported(score.kind(), column.getKey()));
        assertThat(
            score.kind().words() + ": " + column.getKey(),
            score.share(column.getValue()),
            lessThanOrEqualTo(reported + PRINTED));
      }
    }
  }

  /** A cell of the report. */
  private static String reported(Kind kind, String column) throws IOException {
    List<String> lines = Files.readAllLines(REPORT);
    String named = "\"" + kind.words() + "\",";
    String line = lines.stream().filter(one -> one.startsWith(named)).findFirst().orElseThrow();
    List<String> cells = List.of(line.substring(named.length()).split(",", -1));
    return cells.get(List.of(lines.get(0).split(",", -1)).indexOf(column) - 1);
  }

  private static void holds(Predicate<Verdict> is, double bound) {
    List<KindScore> odd = SCORES.stream().filter(score -> score.kind() != Kind.ORDINARY).toList();
    int seasons = odd.stream().mapToInt(KindScore::count).sum();
    double share = odd.stream().mapToLong(score -> score.count(is)).sum() / (double) seasons;
    assertThat(share, lessThanOrEqualTo(bound + luck(bound, seasons)));
  }

  private static double luck(double share, int of) {
    return LUCK * Math.sqrt(share * (1 - share) / of);
  }
}
