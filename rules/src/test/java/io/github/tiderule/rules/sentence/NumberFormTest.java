package io.github.tiderule.rules.sentence;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.is;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Numbers as sentences tell them. */
class NumberFormTest {

  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '`',
      value = {
        "200000000; million; 200",
        "0.4; percent; 40",
        "48; days:words:a day|# days; two days",
        "24; days:words:a day|# days; a day",
        "14; weeks-of-days:words; two",
        "3; words; three",
        "3.5; words; three and a half",
        "0.5; words; half",
        "2.25; words; 2.25",
        "13; words; thirteen",
        "21; words; 21",
        "-2; negative:words; two",
        "1.5; plus-half:words; two",
        "3.5; less-half:words; three",
        "2.25; plus-quarter:hours-of-days; 60",
        "3.25; less-quarter:hours-of-days; 72",
        "5; plus-two; 7",
        "90; months-of-days:round:words:month|# months; three months",
        "30; months-of-days:round:words:month|# months; month",
        "12; days:span; half a day",
        "20; days:span; 20 hours",
        "24; days:span; a day",
        "30; days:round:span; a day",
        "36; days:span; a day and a half",
        "60; days:span; two and a half days",
        "7; span; a week",
        "28; span; four weeks",
        "91; span; 13 weeks",
        "25; span; 25 days",
        "2; words:times; twice",
        "3; words:times; three times",
        "1.5; times; 1.5 times",
        "3; words:times:capital; Three times",
        "2; part-of; half",
        "3; part-of; a third of",
        "2.5; part-of; 40 % of",
        "1; days:of; 0.04"
      },
      delimiter = ';')
  void writesANumberAsPeopleSayIt(double value, String forms, String written) {
    assertThat(NumberForm.write(value, List.of(forms.split(":", -1)), Marks.PLAIN), is(written));
  }

  @Test
  void aTemplateTakesKnownFormsOnly() {
    IllegalArgumentException refusal =
        assertThrows(IllegalArgumentException.class, () -> Template.of("in {next.x:fortnights}"));
    assertThat(refusal.getMessage(), containsString("fortnights"));
  }

  @Test
  void anObservationBehindItsNounReadsThePlainWay() {
    assertThat(
        Sentence.of("The scan {:of} shows pups", Part.key("s1")).toString(),
        is("The scan s1 shows pups"));
  }

  private static String written(double value, String forms) {
    return NumberForm.write(value, List.of(forms.split(":", -1)), Marks.PLAIN);
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
