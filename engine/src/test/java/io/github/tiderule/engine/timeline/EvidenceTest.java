package io.github.tiderule.engine.timeline;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.is;

import io.github.tiderule.rules.fact.Certainty;
import io.github.tiderule.rules.fact.FirstBlood;
import io.github.tiderule.rules.fact.assay.Method;
import io.github.tiderule.rules.fact.assay.Series;
import io.github.tiderule.rules.fact.observation.Folds;
import io.github.tiderule.rules.fact.observation.Neutrophils;
import io.github.tiderule.rules.fact.observation.SignKind;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What a season holds, and what is left of it. */
class EvidenceTest {

  private static final Series RIA = Series.of("A", Method.RIA);

  private final Evidence.Value value = new Evidence.Value("a", 6, 0.7, RIA, false, false);
  private final Evidence.Interval limit =
      new Evidence.Interval("b", 5, 0, 0.5, RIA, false, false, false);
  private final Evidence.Lh lh = new Evidence.Lh("c", 9, true);
  private final Evidence.SmearSeen smear = new Evidence.SmearSeen("d", 10, 80.0, Neutrophils.NONE);
  private final Evidence.FoldsSeen folds = new Evidence.FoldsSeen("e", 11, Folds.ANGULAR);
  private final Evidence.SignSeen sign = new Evidence.SignSeen("f", 12, SignKind.STANDS, true);
  private final Evidence.Scan scan = new Evidence.Scan("g", 13, true);
  private final Evidence all =
      new Evidence(
          new FirstBlood(LocalDate.of(2027, 3, 1), Certainty.SEEN),
          0.5,
          14,
          List.of(),
          List.of(value),
          List.of(limit),
          List.of(lh),
          List.of(smear),
          List.of(folds),
          List.of(sign),
          List.of(scan));
  private final List<Evidence.Item> items = List.of(value, limit, lh, smear, folds, sign, scan);

  @Test
  void everythingSeenIsAnItem() {
    assertThat(all.items(), equalTo(items));
    assertThat(all.times(), equalTo(List.of(6.0, 5.0, 9.0, 10.0, 11.0, 12.0, 13.0)));
    assertThat(Evidence.NOTHING.items(), is(empty()));
  }

  @Test
  void oneIsLeftOutAndNoOther() {
    for (Evidence.Item out : items) {
      assertThat(
          all.without(out.id()).items(),
          equalTo(items.stream().filter(item -> item != out).toList()));
    }
    assertThat(all.without("none of them"), equalTo(all));
  }

  @Test
  void ofProgesteroneAloneNothingElseIsLeft() {
    assertThat(all.progesteroneOnly().items(), equalTo(List.of(value, limit)));
    assertThat(all.progesteroneOnly().firstBloodDay(), is(0.5));
    assertThat(all.progesteroneOnly().now(), is(14.0));
  }

  @Test
  void aNumberMoreStandsLast() {
    Evidence.Value more = new Evidence.Value("h", 8, 1.2, RIA, false, false);
    Evidence with = all.with(more);
    assertThat(with.values(), equalTo(List.of(value, more)));
    assertThat(with.without("h"), equalTo(all));
  }

  @Test
  void bloodOrOneObservationSaysSomething() {
    assertThat(Evidence.NOTHING.saysSomething(), is(false));
    assertThat(new PlainEvidence().evidence().saysSomething(), is(true));
    Evidence one = Evidence.NOTHING.with(value);
    assertThat(one.saysSomething(), is(true));
  }
}
