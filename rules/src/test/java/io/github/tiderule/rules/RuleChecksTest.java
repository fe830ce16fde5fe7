package io.github.tiderule.rules;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.is;

import io.github.tiderule.rules.RuleChecks.Written;
import io.github.tiderule.rules.source.Table;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;

/** The rule base passes its checks, and each check fails where it should. */
class RuleChecksTest {

  private static final RuleTexts TEXTS = RuleTexts.load();
  private static final List<Written> RULES = RuleChecks.rules(TEXTS.files());
  private static final Map<String, Class<?>> TYPES =
      RuleChecks.types(
          StreamSupport.stream(TEXTS.names().spliterator(), false).map(TEXTS::imports).toList());

  private static List<Written> rule(String file, String id, String when, String then) {
    return RuleChecks.rules(
        Map.of(file, "rule \"" + id + "\"\nwhen\n    " + when + "\nthen\n    " + then + "\nend\n"));
  }

  private static List<Written> both(List<Written> one, List<Written> other) {
    return Stream.concat(one.stream(), other.stream()).toList();
  }

  @Test
  void everyRuleIsRead() {
    assertThat(RULES.size(), is(TEXTS.count()));
  }

  @Test
  void idsAreUsedOnceAndNeverAgain() {
    List<String> list =
        Table.text("/io/github/tiderule/rules/ids.txt")
            .lines()
            .filter(line -> !line.isBlank() && !line.startsWith("#"))
            .toList();
    assertThat(
        "keep rules/src/test/resources/io/github/tiderule/rules/ids.txt",
        RuleChecks.ids(RULES, list),
        is(empty()));
  }

  @Test
  void anIdUsedTwiceAgainOrUnlistedIsFound() {
    List<Written> one = rule("notes/a", "CAR-001", "A( x )", "b");
    assertThat(RuleChecks.ids(one, List.of("CAR-001")), is(empty()));
    assertThat(
        RuleChecks.ids(both(one, one), List.of("CAR-001")), contains("CAR-001 names two rules"));
    assertThat(
        RuleChecks.ids(one, List.of("CAR-001 retired")),
        contains("CAR-001 is retired and may not be used again"));
    assertThat(
        RuleChecks.ids(one, List.of("CAR-002")),
        contains("CAR-001 is not listed: add it", "CAR-002 is gone: mark it retired"));
    assertThat(
        RuleChecks.ids(one, List.of("CAR-001", "CAR-001")), contains("CAR-001 is listed twice"));
  }

  @Test
  void noTwoRulesConcludeTheSameFromTheSame() {
    assertThat(RuleChecks.twins(RULES), is(empty()));
  }

  @Test
  void twinsAreFoundWhateverTheirNamesAndSpaces() {
    List<Written> one =
        rule(
            "notes/a",
            "CAR-001",
            "$a : Sign( present == true )",
            "insertLogical( Caution.of( CautionLevel.VET ) )");
    List<Written> twin =
        rule(
            "notes/a",
            "CAR-002",
            "$b :  Sign( present == true )",
            "insertLogical( Caution.of( CautionLevel.VET, 1 ) )");
    List<Written> other =
        rule(
            "notes/a",
            "CAR-003",
            "$b : Sign( present == true )",
            "insertLogical( Caution.of( CautionLevel.CARE ) )");
    assertThat(RuleChecks.twins(both(one, twin)), contains("CAR-001 and CAR-002"));
    assertThat(RuleChecks.twins(both(one, other)), is(empty()));
  }

  @Test
  void noStageWaitsForALaterOne() {
    assertThat(RuleChecks.backwardStages(RULES), is(empty()));
  }

  @Test
  void aStageThatWaitsForALaterOneIsFound() {
    List<Written> early = rule("reading/a", "RDG-001", "TestDue( x )", "b");
    List<Written> late = rule("next/a", "NXT-001", "Moment( )", "insertLogical( TestDue.of( 1 ) )");
    assertThat(
        RuleChecks.backwardStages(both(early, late)),
        contains("RDG-001 waits for TestDue of a later stage"));
    assertThat(RuleChecks.backwardStages(late), is(empty()));
  }

  @Test
  void nothingIsConcludedFromAMissingValue() {
    assertThat(TYPES.containsKey("Progesterone"), is(true));
    assertThat(RuleChecks.negationsOfMissing(RULES, TYPES), is(empty()));
  }

  @Test
  void aNegationOfAMissingValueIsFound() {
    String negated = "$p : Progesterone( comparator != Comparator.ABOVE )";
    assertThat(
        RuleChecks.negationsOfMissing(rule("reading/a", "RDG-001", negated, "b"), TYPES),
        contains("RDG-001: comparator !="));
    String asked = "$p : Progesterone( comparator != null, comparator != Comparator.ABOVE )";
    assertThat(
        RuleChecks.negationsOfMissing(rule("reading/a", "RDG-001", asked, "b"), TYPES),
        is(empty()));
    String never = "$p : Progesterone( method != Method.RIA )";
    assertThat(
        RuleChecks.negationsOfMissing(rule("reading/a", "RDG-001", never, "b"), TYPES),
        is(empty()));
  }
}
