package io.github.tiderule.rules.sentence;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.is;

import java.util.List;
import org.junit.jupiter.api.Test;

class NumberFormTest {

  private static String written(double value, String forms) {
    return NumberForm.write(value, List.of(forms.split(":", -1)));
  }

  @Test
  void wordsReachTwentyAndKnowHalves() {
    assertThat(written(8, "words"), is("eight"));
    assertThat(written(18, "words"), is("eighteen"));
    assertThat(written(1.5, "words"), is("one and a half"));
    assertThat(written(0.5, "words"), is("half"));
    assertThat(written(21, "words"), is("21"));
    assertThat(written(4.4, "words"), is("4.4"));
    assertThat(written(-1, "words"), is("-1"));
  }

  @Test
  void daysBecomeMonthsAndYearsAsTheyAreSpokenOf() {
    assertThat(written(135, "round-months:words"), is("four and a half"));
    assertThat(written(30, "round-months:words:month|# months"), is("month"));
    assertThat(written(45, "round-months:words:month|# months"), is("one and a half months"));
    assertThat(written(365, "years-of-days:words:a year|# years"), is("a year"));
    assertThat(written(18, "years-of-months:words:a year|# years"), is("one and a half years"));
  }

  @Test
  void aShareIsAPartWhereThereIsAWordForIt() {
    assertThat(written(0.2, "part"), is("a fifth"));
    assertThat(written(0.5, "part"), is("half"));
    assertThat(written(0.12, "part"), is("12 %"));
    assertThat(written(0.7, "rest:percent"), is("30"));
  }

  @Test
  void aPatternTellsNoneOneAndManyApart() {
    String often = "less-one:words:at least once|more than once|more than # times";
    assertThat(written(1, often), is("at least once"));
    assertThat(written(2, often), is("more than once"));
    assertThat(written(3, often), is("more than two times"));
    assertThat(written(2, "words:one hour|# hours:capital"), is("Two hours"));
  }

  @Test
  void roundingGoesBeforeWriting() {
    assertThat(written(63.1, "rounded"), is("63"));
    assertThat(written(9.5, "rounded:words"), is("ten"));
    assertThat(written(15.9, "whole"), is("16"));
  }
}
