package io.github.tiderule.api.page.form;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.nullValue;

import io.github.tiderule.api.page.plan.Documents;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.format.node.Node;
import io.github.tiderule.format.node.NodeText;
import io.github.tiderule.format.problem.Problem;
import io.github.tiderule.format.problem.ProblemCode;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.junit.jupiter.api.Test;

/** The semen in hand and what became of her, as they are typed. */
class PartFormTest {

  private static final Texts TEXTS = Texts.ofPages(Locale.ROOT);
  private static final SemenForm SEMEN = SemenForm.of(ZoneId.of("Europe/Vienna"), TEXTS);
  private static final OutcomeForm OUTCOME = OutcomeForm.of(TEXTS);
  private static final String BEFORE =
      "{\"zone\":\"Europe/Vienna\",\"firstBlood\":{\"certainty\":\"unknown\"}";
  private static final Node.Members WAS = Documents.of(BEFORE + "}");

  private static Typed typed(String... fields) {
    Typed typed = Typed.nothing();
    for (int i = 0; i < fields.length; i += 2) {
      typed.fill(fields[i], fields[i + 1]);
    }
    return typed;
  }

  private static String read(PartForm form, Typed typed) {
    return NodeText.of(Objects.requireNonNull(form.read(typed, WAS), typed.faults().toString()));
  }

  private static List<String> faults(PartForm form, Typed typed) {
    assertThat(form.read(typed, WAS), is(nullValue()));
    return typed.faults().stream().map(Typed.Fault::field).toList();
  }

  private static Node.Members document(String part) {
    return Documents.of(BEFORE + "," + part + "}");
  }

  @Test
  void everythingASeasonSaysOfSemenComesBackAsItWas() {
    Node.Members season =
        document(
            """
            "insemination": {
              "at": "2027-01-23T12:00:00+01:00",
              "ejaculate": {"collectedAt": "2027-01-23T11:00:00+01:00", "fractions": [
                 {"fraction": "presperm", "volumeMl": 1.5},
                 {"fraction": "sperm-rich", "volumeMl": 2, "appearance": "creamy"}],
                "concentrationMillionPerMl": 300, "progressivelyMotilePercent": 80,
                "normalPercent": 75, "temperatureC": 36.5},
              "certificate": {"unit": "vial", "units": 4, "spermPerUnitMillion": 50,
                "volumeMlPerUnit": 0.5, "postThawProgressivelyMotilePercent": 40,
                "postThawNormalPercent": 60},
              "arrival": {"collectedAt": "2027-01-21T10:00:00+01:00",
                "arrivedAt": "2027-01-23T11:00:00+01:00", "temperatureC": -2, "volumeMl": 10,
                "concentrationMillionPerMl": 30, "totalSpermMillion": 500,
                "progressivelyMotilePercent": 70, "normalPercent": 80},
              "wanted": {"volumeMl": 3, "concentrationMillionPerMl": 100, "doses": 2},
              "extenderTemperatureC": 36}""");
    Typed typed = SEMEN.filled(season);
    assertThat(SEMEN.read(typed, WAS), is(season));
    assertThat(typed.rows("fractions", 1), is(3));
  }

  @Test
  void anEmptyFormSaysNothingAndTakesTheOldAway() {
    Node.Members season = document("\"insemination\": {\"wanted\": {\"doses\": 2}}");
    assertThat(SEMEN.read(typed("ejaculate-normalPercent", ""), season), is(WAS));
    assertThat(
        OUTCOME.read(typed("pregnant", "unknown"), document("\"outcome\": {\"pregnant\": true}")),
        is(WAS));
  }

  @Test
  void anEjaculateNeedsATubeAndACertificateItsNumber() {
    assertThat(
        faults(SEMEN, typed("fractions-0-fraction", "", "ejaculate-normalPercent", "80")),
        contains("fractions-0-fraction"));
    assertThat(
        faults(SEMEN, typed("fractions-1-volumeMl", "2", "fractions-0-volumeMl", "")),
        contains("fractions-1-fraction"));
    assertThat(
        faults(SEMEN, typed("certificate-spermPerUnitMillion", "50")),
        contains("certificate-units"));
  }

  @Test
  void numbersAreReadEitherWayAndOnlyTemperatureOnArrivalBelowZero() {
    assertThat(
        SEMEN.read(typed("arrival-temperatureC", "−1,5", "arrival-volumeMl", "10,5"), WAS),
        is(
            document(
                "\"insemination\": {\"arrival\": {\"temperatureC\": -1.5, \"volumeMl\": 10.5}}")));
    assertThat(faults(SEMEN, typed("arrival-volumeMl", "-1")), contains("arrival-volumeMl"));
    assertThat(
        faults(SEMEN, typed("arrival-temperatureC", "-x")), contains("arrival-temperatureC"));
  }

  @Test
  void problemsStandByTheFieldOfTheirPart() {
    Typed typed =
        typed(
            "arrival-temperatureC", "90", "ejaculate-temperatureC", "", "fractions-0-volumeMl", "");
    typed.refuse(
        List.of(
            new Problem("/insemination/arrival/temperatureC", ProblemCode.OUT_OF_RANGE, "a", ""),
            new Problem(
                "/insemination/ejaculate/fractions/0/volumeMl", ProblemCode.OUT_OF_RANGE, "b", ""),
            new Problem("", ProblemCode.CONTRADICTION, "c", "")),
        TEXTS);
    assertThat(
        typed.faults().stream().map(Typed.Fault::field).toList(),
        contains("arrival-temperatureC", "fractions-0-volumeMl", Typed.NO_FIELD));
  }

  @Test
  void whatBecameOfHerComesBackAsItWas() {
    Node.Members season =
        document(
            """
            "outcome": {"pregnant": true, "whelpedOn": "2027-03-01", "litterSize": 6,
             "pupsBornAlive": 5}""");
    assertThat(OUTCOME.read(OUTCOME.filled(season), WAS), is(season));
    assertThat(read(OUTCOME, typed("pregnant", "no")).contains("\"pregnant\":false"), is(true));
  }

  @Test
  void aLitterWithoutAPregnancyIsRefused() {
    assertThat(faults(OUTCOME, typed("pregnant", "no", "litterSize", "4")), contains("pregnant"));
    assertThat(
        faults(OUTCOME, typed("pregnant", "no", "whelpedOn", "2027-03-01")), contains("pregnant"));
    assertThat(faults(OUTCOME, typed("whelpedOn", "soon")), contains("whelpedOn"));
  }
}
