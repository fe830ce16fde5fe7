package io.github.tiderule.format.cycle;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.is;

import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.format.Documents;
import io.github.tiderule.format.problem.Problem;
import io.github.tiderule.rules.fact.semen.Route;
import io.github.tiderule.rules.fact.semen.Semen;
import io.github.tiderule.rules.semen.Insemination;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Bad numbers about semen and tests are refused where they stand, with what they may mean. */
class SemenRefusalTest {

  private static final String BEFORE = "/insemination/";

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "'fraction': 'sperm-rich', 'volumeMl': 2.5|'fraction': 'sperm-rich', 'volumeMl': -2.5|ejaculate/fractions/1/volumeMl|negative-value|Maybe 2.5?",
        "'fraction': 'sperm-rich', 'volumeMl': 2.5|'fraction': 'sperm-rich', 'volumeMl': 0|ejaculate/fractions/1/volumeMl|out-of-range|unit",
        "'fraction': 'sperm-rich', 'volumeMl': 2.5|'fraction': 'sperm-rich', 'volumeMl': 1e308|ejaculate/fractions/1/volumeMl|out-of-range|unit",
        "'fraction': 'sperm-rich', 'volumeMl': 2.5|'fraction': 'sperm-rich', 'volumeMl': '2,5'|ejaculate/fractions/1/volumeMl|not-a-number|2.5",
        "'concentrationMillionPerMl': 300|'concentrationMillionPerMl': 300000000|ejaculate/concentrationMillionPerMl|out-of-range|Maybe 300? It is given in millions.",
        "'concentrationMillionPerMl': 300|'concentrationMillionPerMl': -300|ejaculate/concentrationMillionPerMl|negative-value|Maybe 300?",
        "'progressivelyMotilePercent': 85|'progressivelyMotilePercent': 185|ejaculate/progressivelyMotilePercent|out-of-range|No more than all of them",
        "'postThawNormalPercent': 75|'postThawNormalPercent': 101|certificate/postThawNormalPercent|out-of-range|digit too many",
        "'temperatureC': 36|'temperatureC': 100.4|ejaculate/temperatureC|out-of-range|100.4 °F is 38 °C",
        "'extenderTemperatureC': 35|'extenderTemperatureC': 98|extenderTemperatureC|out-of-range|Maybe 36.7?",
        "'extenderTemperatureC': 35|'extenderTemperatureC': -3|extenderTemperatureC|negative-value|Maybe 3?",
        "'spermPerUnitMillion': 60|'spermPerUnitMillion': 60000000|certificate/spermPerUnitMillion|out-of-range|Maybe 60? It is given in millions.",
        "'units': 2|'units': 0|certificate/units|out-of-range|unit",
        "'units': 2|'units': 1.5|certificate/units|not-a-whole-number|round",
        "'doses': 2}|'doses': 0}|wanted/doses|out-of-range|unit",
        "'appearance': 'full-milk'|'appearance': 'full milk'|ejaculate/fractions/1/appearance|unknown-word|Maybe \"full-milk\"?",
        "'fraction': 'prostatic'|'fraction': 'third'|ejaculate/fractions/2/fraction|unknown-word|presperm, sperm-rich",
        "'at': '2027-01-13T10:00:00+01:00',|'at': '2027-01-11T10:00:00+01:00',|at|wrong-order|swapped",
        "'arrivedAt': '2027-01-12T16:00:00+01:00'|'arrivedAt': '2027-01-12T06:00:00+01:00'|arrival/arrivedAt|wrong-order|swapped",
      })
  void aBadNumberIsRefusedWhereItStands(
      String part, String instead, String path, String code, String hint) {
    Problem problem = onlyProblem(part, instead);
    assertThat(problem.path(), is(BEFORE + path));
    assertThat(problem.code().word(), is(code));
    assertThat(problem.hint(), containsString(hint));
  }

  private static Problem onlyProblem(String part, String instead) {
    List<Problem> problems =
        Documents.refused(Documents.fullCycle(part.replace('\'', '"'), instead.replace('\'', '"')));
    assertThat(problems.toString(), problems, hasSize(1));
    return problems.get(0);
  }

  @Test
  void aColdParcelMayBeBelowZero() {
    CycleRecord cycle =
        Documents.read(Documents.fullCycle("\"temperatureC\": 5,", "\"temperatureC\": -2.5,"));
    Insemination insemination = Objects.requireNonNull(cycle.insemination());
    assertThat(Objects.requireNonNull(insemination.arrival()).temperatureC(), is(-2.5));
  }

  @Test
  void aBrucellaTestIsNotClear() {
    Problem problem = onlyProblem("'result': 'negative'", "'result': 'clear'");
    assertThat(problem.path(), is("/female/tests/0/result"));
    assertThat(problem.hint(), containsString("Maybe \"negative\"?"));
  }

  @Test
  void theKindDescribedIsMeantWhereNoneIsNamed() {
    CycleRecord cycle =
        Documents.read(
            Documents.cycleWith("")
                .replaceFirst(
                    "\\]\\}\\s*$", "], \"insemination\": {\"certificate\": {\"units\": 2}}}"));
    assertThat(cycle.semenPlan().semen(), is(Semen.FROZEN));
    assertThat(cycle.semenPlan().route(), is(Route.TRANSCERVICAL));
  }
}
