package io.github.tiderule.format.laboratory;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.is;

import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.format.Documents;
import io.github.tiderule.format.node.NodeText;
import io.github.tiderule.format.problem.Pointer;
import io.github.tiderule.format.problem.Problem;
import io.github.tiderule.format.problem.ProblemCode;
import io.github.tiderule.format.problem.Problems;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class LaboratoryFileTest {

  private static final String COLUMNS = "at=Drawn,value=Result,unit=Unit";

  /** A season in Vienna looked at on 12 January 2027. */
  private static CycleRecord season(String observations) {
    return Documents.read(Documents.cycleWith(observations));
  }

  private static Columns columns(String text) {
    return Columns.read(text, Pointer.ROOT, new Problems()).orElseThrow();
  }

  private static List<Line> lines(String columns, String text, String observations) {
    return LaboratoryFile.preview(
            text, columns(columns), season(observations), Set.of(), Pointer.ROOT, new Problems())
        .orElseThrow();
  }

  private static Line only(String columns, String row) {
    List<Line> lines = lines(columns, "Drawn;Result;Unit\n" + row + "\n", "");
    assertThat(lines.size(), is(1));
    assertThat(lines.get(0).number(), is(2));
    return lines.get(0);
  }

  private static String observation(Line line) {
    if (line.observation() == null) {
      throw new AssertionError(line.message());
    }
    return NodeText.of(line.observation());
  }

  private static Problem refused(String columns, String text) {
    Problems problems = new Problems();
    boolean read =
        Columns.read(columns, Pointer.ROOT, problems)
            .flatMap(
                good ->
                    LaboratoryFile.preview(
                        text, good, season(""), Set.of(), Pointer.ROOT, problems))
            .isPresent();
    assertThat(read, is(false));
    assertThat(problems.all().toString(), problems.all().size(), is(1));
    return problems.all().get(0);
  }

  @Test
  void aLineBecomesAnObservation() {
    assertThat(
        observation(only(COLUMNS, "11.01.2027 08:00;<0,2;\u00B5g/l")),
        is(
            "{\"id\":\"lab-2027-01-11T07:00Z\",\"kind\":\"progesterone\","
                + "\"at\":\"2027-01-11T08:00:00+01:00\",\"value\":0.2,\"comparator\":\"<\","
                + "\"unit\":\"ug/L\",\"asReported\":\"<0,2 \u00B5g/l\"}"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "2027-01-05 08:30        | 2027-01-05T08:30:00+01:00",
        "2027-01-05T08:30:15     | 2027-01-05T08:30:00+01:00",
        "2027-01-05T07:30Z       | 2027-01-05T08:30:00+01:00",
        "2027-01-05T02:30-05:00  | 2027-01-05T08:30:00+01:00",
        "5.1.2027 8:30           | 2027-01-05T08:30:00+01:00",
        "05.01.2027, 08:30       | 2027-01-05T08:30:00+01:00",
        "26/12/2026 08:30        | 2026-12-26T08:30:00+01:00",
        "12/26/2026 08:30        | 2026-12-26T08:30:00+01:00",
        "01/01/2027 08:30        | 2027-01-01T08:30:00+01:00"
      })
  void datesThatMeanOneDayAreRead(String written, String at) {
    assertThat(
        observation(only(COLUMNS, written + ";2,1;ng/mL")),
        containsString("\"at\":\"" + at + "\""));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "05/01/2027 08:30  | can mean two days",
        "31.02.2027 08:30  | no calendar shows",
        "2027-01-05        | has no time of day",
        "5/1.2027 08:30    | not written like",
        "05.01.27 08:30    | not written like",
        "2027-01-05 25:30  | the time of day is",
        "28.03.2027 02:30  | does not exist",
        "25.10.2026 02:30  | comes twice",
        "05.01.2020 08:30  | before asOf",
        "yesterday         | not written like"
      })
  void otherDatesAreRefusedWithTheReason(String written, String reason) {
    Line line = only(COLUMNS, written + ";2,1;ng/mL");
    assertThat(line.outcome(), is(Line.Outcome.REFUSED));
    assertThat(line.message(), containsString(reason));
  }

  @Test
  void theOrderOfDayAndMonthIsTakenWhenSaid() {
    String row = "05/01/2027 08:30;2,1;ng/mL";
    assertThat(
        observation(only(COLUMNS + ",dates=day-first", row)), containsString("2027-01-05T08:30"));
    String other = "01/05/2027 08:30;2,1;ng/mL";
    assertThat(
        observation(only(COLUMNS + ",dates=month-first", other)),
        containsString("2027-01-05T08:30"));
    assertThat(
        only(COLUMNS + ",dates=month-first", "13/01/2027 08:30;2,1;ng/mL").message(),
        containsString("no calendar shows"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "2,1    | '\"value\":2.1,'",
        "02.10  | '\"value\":2.10,'",
        "0,125  | '\"value\":0.125,'",
        "> 40   | '\"value\":40,\"comparator\":\">\",'",
        "< 0.2  | '\"value\":0.2,\"comparator\":\"<\",'"
      })
  void valuesThatMeanOneNumberAreRead(String written, String part) {
    assertThat(
        observation(only(COLUMNS, "2027-01-05 08:30;" + written + ";ng/mL")), containsString(part));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "1,234     | thousandths or thousands",
        "1.234     | thousandths or thousands",
        "-2        | not a number",
        "2,1 ng/mL | not a number",
        "1.2.3     | not a number",
        "NaN       | not a number",
        "''        | there is no value",
        "99999     | out of range",
        "<0        | nothing is below zero"
      })
  void otherValuesAreRefusedWithTheReason(String written, String reason) {
    Line line = only(COLUMNS, "2027-01-05 08:30;" + written + ";ng/mL");
    assertThat(line.outcome(), is(Line.Outcome.REFUSED));
    assertThat(line.message(), containsString(reason.equals("out of range") ? "must be" : reason));
  }

  @Test
  void theMarkBeforeDecimalsIsTakenWhenSaid() {
    assertThat(
        observation(only(COLUMNS + ",decimals=comma", "2027-01-05 08:30;1,234;ng/mL")),
        containsString("\"value\":1.234,"));
    assertThat(
        only(COLUMNS + ",decimals=comma", "2027-01-05 08:30;1.2;ng/mL").message(),
        containsString("another mark"));
  }

  @Test
  void aMissingUnitStaysMissingAndAnotherIsRefused() {
    String without = observation(only(COLUMNS, "2027-01-05 08:30;6,4;"));
    assertThat(without.contains("\"unit\""), is(false));
    Line other = only(COLUMNS, "2027-01-05 08:30;6,4;ng/dL");
    assertThat(other.message(), is("the unit is \"ng/dL\"."));
  }

  @ParameterizedTest
  @ValueSource(strings = {",", ";", "\t"})
  void separatorsAreFoundOut(String separator) {
    String text =
        "\"Lab\",\"Drawn\",\"Time\",\"Result\"\r\n\"A\nand B\",2027-01-05,08:30,2.1\r\n\r\nA,x,08:30,1\r\n"
            .replace(",", separator);
    List<Line> lines = lines("at=Drawn,time=Time,value=Result", text, "");
    assertThat(lines.size(), is(2));
    assertThat(lines.get(0).outcome(), is(Line.Outcome.NEW));
    assertThat(lines.get(1).number(), is(5));
    assertThat(lines.get(1).outcome(), is(Line.Outcome.REFUSED));
  }

  @Test
  void whatIsKnownIsADuplicateAndADifferingValueIsNotEntered() {
    String known =
        """
        {"id": "p1", "kind": "progesterone", "at": "2027-01-08T08:00:00+01:00", "value": 2.1,
         "unit": "ng/mL", "method": "clia", "laboratory": "A"}
        """;
    List<Line> lines =
        lines(
            COLUMNS + ",laboratory=Lab",
            """
            Drawn;Result;Unit;Lab
            08.01.2027 08:00;2,10;ng/mL;A
            08.01.2027 08:00;2,4;ng/mL;A
            08.01.2027 08:00;2,4;ng/mL;B
            09.01.2027 08:00;3,4;ng/mL;A
            09.01.2027 08:00;3,4;ng/mL;A
            """,
            known);
    assertThat(
        lines.stream().map(line -> line.outcome().word()).toList(),
        is(List.of("duplicate", "refused", "new", "new", "duplicate")));
    assertThat(lines.get(0).message(), is("It is p1."));
    assertThat(lines.get(1).message(), containsString("differs from p1"));
    assertThat(PreviewReport.counts(lines), is("2 new, 2 duplicate, 1 refused"));
  }

  @Test
  void linesOfOtherFemalesAndOtherMethodsAreRefused() {
    CycleRecord juniper = Documents.read(Documents.fullCycle());
    List<Line> lines =
        LaboratoryFile.preview(
                """
                Drawn,Result,Who,How
                2027-01-05 08:30,2.1,juniper,CLIA
                2027-01-06 08:30,2.1,Fern,clia
                2027-01-07 08:30,2.1,Juniper,strip
                """,
                columns("at=Drawn,value=Result,female=Who,method=How"),
                juniper,
                Set.of("lab-2027-01-05T07:30Z"),
                Pointer.ROOT,
                new Problems())
            .orElseThrow();
    assertThat(observation(lines.get(0)), containsString("\"method\":\"clia\""));
    assertThat(observation(lines.get(0)), containsString("\"lab-2027-01-05T07:30Z-2\""));
    assertThat(lines.get(1).message(), containsString("it is for \"Fern\""));
    assertThat(lines.get(2).message(), containsString("not one of ria, clia"));
  }

  @Test
  void filesThatAreNoTableAreRefusedAsAWhole() {
    assertThat(refused(COLUMNS, " \n").code(), is(ProblemCode.EMPTY_FILE));
    assertThat(refused(COLUMNS, "Drawn,Result,Unit\n\n").code(), is(ProblemCode.EMPTY_FILE));
    Problem missing = refused(COLUMNS, "Drawn;Results;Unit\n1;2;3\n");
    assertThat(missing.code(), is(ProblemCode.MISSING_FIELD));
    assertThat(missing.hint(), containsString("Maybe \"Results\"?"));
    assertThat(
        refused(COLUMNS, "Drawn,Drawn,Result,Unit\n1,2,3,4\n").code(),
        is(ProblemCode.DUPLICATE_KEY));
    assertThat(
        refused(COLUMNS, "Drawn,Result,Unit\n" + "1,2,3\n".repeat(501)).code(),
        is(ProblemCode.TOO_MANY));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "at=Drawn",
        "",
        "at=Drawn,value=",
        "at=Drawn,value=Result,colour=Red",
        "at=Drawn,at=Drawn2,value=Result",
        "at=Drawn,value=Result,dates=dmy"
      })
  void columnsThatSayTooLittleOrNothingKnownAreRefused(String columns) {
    Problems problems = new Problems();
    assertThat(Columns.read(columns, Pointer.ROOT, problems).isPresent(), is(false));
    assertThat(problems.none(), is(false));
  }

  @Test
  void anOffsetThatNoClockHasIsRefused() {
    for (String offset : List.of("+19:00", "-99:99", "+01:60")) {
      Line line = only(COLUMNS, "2027-01-08 08:00" + offset + ";2.1;ng/mL");
      assertThat(line.outcome(), is(Line.Outcome.REFUSED));
      assertThat(line.message(), containsString(offset + "\", whose offset no clock has"));
    }
  }
}
