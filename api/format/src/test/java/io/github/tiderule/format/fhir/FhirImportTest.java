package io.github.tiderule.format.fhir;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.startsWith;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.format.problem.Problem;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FhirImportTest {

  private static final String TIME = "'at':'2027-01-10T08:00:00+01:00'";

  private static String p1(String value, String unit) {
    return "{\"id\": \"p1\", \"kind\": \"progesterone\", \"at\": \"2027-01-10T08:00:00+01:00\","
        + " \"value\": "
        + value
        + unit
        + "}";
  }

  @Test
  void anOrdinaryResultIsTakenAsItIs() {
    Found found = Observed.one(Observed.ordinary());
    assertThat(found.outcome(), is(Found.Outcome.NEW));
    assertThat(found.message(), is(""));
    String id = String.valueOf(found.id());
    assertThat(id, startsWith("fhir-4711-"));
    assertThat(
        Observed.shown(found.observation()),
        is(
            "{'id':'"
                + id
                + "','kind':'progesterone',"
                + TIME
                + ",'reportedAt':'2027-01-10T15:30:00Z','value':3.2,'unit':'ng/mL',"
                + "'asReported':'3.2 ng/mL','laboratory':'North','method':'clia'}"));
  }

  @ParameterizedTest
  @CsvSource({
    "2839-9, ng/mL, ng/mL",
    "2839-9, ng/ml, ng/mL",
    "2839-9, ug/L, ug/L",
    "14890-4, nmol/L, nmol/L",
    "14890-4, nmol/l, nmol/L"
  })
  void everyUnitOfBothQuantitiesIsRead(String loinc, String code, String unit) {
    ObjectNode one = Observed.with("2839-9", loinc);
    ((ObjectNode) one.get("valueQuantity")).put("code", code).remove("unit");
    assertThat(
        Observed.shown(Observed.one(one).observation()), containsString("'unit':'" + unit + "'"));
  }

  /** The printed unit settles doubts about a value, so a code alone must not look printed. */
  @Test
  void aCodeIsNotWhatTheResultPrints() {
    ObjectNode one = Observed.ordinary();
    ((ObjectNode) one.get("valueQuantity")).remove("unit");
    assertThat(
        Observed.shown(Observed.one(one).observation()), containsString("'asReported':'3.2'"));
  }

  @ParameterizedTest
  @CsvSource({"2839-9, nmol/L", "14890-4, ng/mL", "14890-4, ug/L"})
  void massAndMolesAreNotMixed(String loinc, String code) {
    ObjectNode one = Observed.with("2839-9", loinc);
    ((ObjectNode) one.get("valueQuantity")).put("code", code).remove("unit");
    assertThat(Observed.refusals(one), is(List.of("/valueQuantity/code wrong-type")));
  }

  @ParameterizedTest
  @CsvSource({"ng/dL", "NG/ML", "ng/Ml", "nmol/mL", "pmol/L", "ug/dL", "ng"})
  void anotherUnitIsRefused(String code) {
    ObjectNode one = Observed.ordinary();
    ((ObjectNode) one.get("valueQuantity")).put("code", code).remove("unit");
    assertThat(Observed.refusals(one), is(List.of("/valueQuantity/code unknown-word")));
  }

  @Test
  void withoutACodeTheUnitIsNotGuessed() {
    ObjectNode one = Observed.ordinary();
    ((ObjectNode) one.get("valueQuantity")).remove(List.of("code", "system"));
    Found found = Observed.one(one);
    assertThat(found.outcome(), is(Found.Outcome.NEW));
    assertThat(Observed.shown(found.observation()).contains("'unit'"), is(false));
    assertThat(found.message(), containsString("will be asked about"));
    ((ObjectNode) one.get("valueQuantity")).put("code", "ng/mL");
    assertThat(Observed.refusals(one), is(List.of("/valueQuantity/system missing-field")));
  }

  @Test
  void whatIsPrintedAndWhatIsCodedMustAgree() {
    ObjectNode one = Observed.ordinary();
    ((ObjectNode) one.get("valueQuantity")).put("unit", "nmol/L");
    assertThat(Observed.refusals(one), is(List.of("/valueQuantity/unit wrong-type")));
    ((ObjectNode) one.get("valueQuantity")).put("unit", "\u00B5g/L");
    assertThat(Observed.refusals(one), is(List.of()));
  }

  @Test
  void anUnknownCodeIsRefusedByName() {
    Found found = Observed.one(Observed.with("2839-9", "2243-4"));
    assertThat(found.outcome(), is(Found.Outcome.REFUSED));
    assertThat(found.problems().size(), is(1));
    Problem problem = found.problems().get(0);
    assertThat(problem.path(), is("/code/coding/0/code"));
    assertThat(problem.message(), startsWith("LOINC \"2243-4\" is not progesterone"));
    assertThat(
        Observed.refusals(Observed.with("http://loinc.org", "http://other.example")),
        is(List.of("/code/coding missing-field")));
    ObjectNode both = Observed.ordinary();
    ((ArrayNode) both.at("/code/coding"))
        .addObject()
        .put("system", "http://loinc.org")
        .put("code", "14890-4");
    assertThat(Observed.refusals(both), is(List.of("/code/coding/1/code wrong-type")));
  }

  @ParameterizedTest
  @CsvSource({"<, <", "<=, <", ">, >", ">=, >"})
  void limitsAreLimits(String written, String read) {
    ObjectNode one = Observed.ordinary();
    ((ObjectNode) one.get("valueQuantity")).put("comparator", written);
    String shown = Observed.shown(Observed.one(one).observation());
    assertThat(shown, containsString("'comparator':'" + read + "'"));
    assertThat(shown, containsString("'asReported':'" + written + "3.2 ng/mL'"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "\"value\": 3.2|\"value\": \"3,2\"|/valueQuantity/value not-a-number",
        "\"value\": 3.2|\"value\": -1|/valueQuantity/value negative-value",
        "\"value\": 3.2|\"value\": NaN|/valueQuantity/value not-a-number",
        "\"value\": 3.2|\"value\": 3.2, \"comparator\": \"~\"|/valueQuantity/comparator unknown-word",
        "valueQuantity|valueString|/valueString unknown-field, /valueQuantity missing-field",
        "T08:00:00+01:00||/effectiveDateTime not-an-instant",
        "08:00:00+01:00|08:00:00|/effectiveDateTime missing-offset",
        "2027-01-10T15|2027-01-09T15|/issued wrong-order",
        "\"status\": \"final\"|\"status\": \"done\"|/status unknown-word",
        "\"status\": \"final\"|\"status\": \"unknown\"|/status unknown-word",
        "\"status\": \"final\",|\"status\": \"final\", \"implicitRules\": \"x\",|/implicitRules unknown-field",
        "\"status\": \"final\",|\"status\": \"final\", \"modifierExtension\": [],|/modifierExtension unknown-field",
        "\"display\": \"Juniper\"|\"display\": \"Juno\"|/subject unknown-word",
        "http://unitsofmeasure.org|http://units.example|/valueQuantity/system unknown-word"
      })
  void whatCannotBeUsedIsRefusedWhereItStands(String target, String replacement, String problems) {
    String other = replacement == null ? "" : replacement;
    List<String> found =
        Observed.found(Observed.season(), null, Observed.text(target, other))
            .get(0)
            .problems()
            .stream()
            .map(one -> one.path() + " " + one.code().word())
            .toList();
    assertThat(String.join(", ", found), is(problems));
  }

  @ParameterizedTest
  @CsvSource({"registered", "preliminary", "cancelled", "entered-in-error"})
  void whatIsNoResultIsLeftOut(String status) {
    ObjectNode one = Observed.with("\"final\"", "\"" + status + "\"");
    one.remove("valueQuantity");
    Found found = Observed.one(one);
    assertThat(found.outcome(), is(Found.Outcome.LEFT_OUT));
    assertThat(found.observation() == null, is(true));
  }

  @Test
  void aCorrectedResultNamesTheOldOne() {
    String id = String.valueOf(Observed.one(Observed.ordinary()).id());
    CycleRecord season = Observed.season(p1("3.2", ", \"unit\": \"ng/mL\"").replace("p1", id));
    ObjectNode again = Observed.ordinary();
    again.putObject("subject").put("display", "juniper");
    assertThat(
        Observed.found(season, null, again.toString()).get(0).outcome(),
        is(Found.Outcome.DUPLICATE));
    ObjectNode changed = again.deepCopy();
    ((ObjectNode) changed.get("valueQuantity")).put("value", 2.3);
    Found refused = Observed.found(season, null, changed.toString()).get(0);
    assertThat(refused.outcome(), is(Found.Outcome.REFUSED));
    assertThat(refused.problems().get(0).message(), containsString("is not called corrected"));
    for (String status : List.of("corrected", "amended")) {
      Found corrected =
          Observed.found(season, null, changed.put("status", status).toString()).get(0);
      assertThat(corrected.outcome(), is(Found.Outcome.CORRECTION));
      assertThat(corrected.id(), is(id));
      assertThat(corrected.message(), is("It was 3.2 ng/mL."));
      assertThat(Observed.shown(corrected.observation()), containsString("'value':2.3"));
    }
    Found retracted =
        Observed.found(season, null, changed.put("status", "entered-in-error").toString()).get(0);
    assertThat(retracted.outcome(), is(Found.Outcome.RETRACTION));
    assertThat(retracted.id(), is(id));
  }

  @Test
  void theSameNumberOfAnotherSystemIsAnotherResult() {
    String one = String.valueOf(Observed.one(Observed.ordinary()).id());
    String other =
        String.valueOf(Observed.one(Observed.with("laboratory.example", "clinic.example")).id());
    assertThat(one.equals(other), is(false));
  }

  @Test
  void aCorrectionThatTellsTheUnitIsOne() {
    String id = String.valueOf(Observed.one(Observed.ordinary()).id());
    CycleRecord season = Observed.season(p1("3.2", "").replace("p1", id));
    ObjectNode again = Observed.ordinary();
    again.putObject("subject").put("display", "juniper");
    Found plain = Observed.found(season, null, again.toString()).get(0);
    assertThat(plain.outcome(), is(Found.Outcome.DUPLICATE));
    assertThat(plain.message(), containsString("It says its unit, which " + id + " lacks"));
    Found corrected =
        Observed.found(season, null, again.put("status", "corrected").toString()).get(0);
    assertThat(corrected.outcome(), is(Found.Outcome.CORRECTION));
  }

  @Test
  void aResultTypedByHandIsRecognised() {
    CycleRecord season = Observed.season(p1("3.2", ", \"unit\": \"ng/mL\""));
    ObjectNode again = Observed.ordinary();
    again.putObject("subject").put("display", "juniper");
    Found same = Observed.found(season, null, again.toString()).get(0);
    assertThat(same.outcome() + " " + same.id(), is("DUPLICATE p1"));
    CycleRecord other = Observed.season(p1("2.3", ", \"unit\": \"ng/mL\""));
    Found differs = Observed.found(other, null, again.toString()).get(0);
    assertThat(differs.outcome(), is(Found.Outcome.REFUSED));
    assertThat(differs.problems().get(0).message(), startsWith("it differs from p1"));
  }

  @Test
  void whomItIsAboutMustBeHerOrBeSaidToBe() {
    ObjectNode one = Observed.ordinary();
    one.putObject("subject").put("reference", "Patient/9");
    ObjectNode other = one.deepCopy();
    other.putObject("subject").put("reference", "Patient/10");
    other.put("effectiveDateTime", "2027-01-11T08:00:00+01:00");
    other.remove(List.of("issued", "identifier"));
    assertThat(
        "nothing is told of the only one",
        Observed.found(Observed.season(), null, one.toString()).get(0).outcome(),
        is(Found.Outcome.NEW));
    String both = one + "\n\n" + other + "\n";
    assertThat(outcomes(Observed.found(Observed.season(), null, both)), is("1 REFUSED, 3 REFUSED"));
    assertThat(
        outcomes(Observed.found(Observed.season(), "Patient/10", both)), is("1 REFUSED, 3 NEW"));
  }

  private static String outcomes(List<Found> all) {
    return String.join(", ", all.stream().map(one -> one.line() + " " + one.outcome()).toList());
  }

  @Test
  void linesThatAreNoResourceStopNothing() {
    ObjectNode one = Observed.ordinary();
    one.putObject("subject").put("display", "JUNIPER");
    String file = one + "\r\n{\"resourceType\": \"Patient\"}\n{broken\n[]\n" + one + "\n";
    List<Found> found = Observed.found(Observed.season(), null, file);
    assertThat(outcomes(found), is("1 NEW, 3 REFUSED, 4 REFUSED, 5 DUPLICATE"));
  }

  @Test
  void aBundleGivesWhatItsOtherResourcesSay() {
    ObjectNode one = Observed.ordinary();
    one.putObject("subject").put("reference", "urn:uuid:1");
    one.putArray("performer").addObject().put("reference", "Organization/7");
    one.putObject("specimen").put("reference", "Specimen/3");
    String specimen =
        "{\"resourceType\": \"Specimen\", \"id\": \"3\", \"type\": {\"coding\": [{\"code\": \"SER\"}]},"
            + "\"collection\": {\"collectedDateTime\": \"2027-01-10T07:00:00Z\"},"
            + "\"container\": [{\"type\": {\"text\": \"gel\"}}],"
            + "\"condition\": [{\"text\": \"lipaemic\"}, {\"text\": \"odd\"}]}";
    String bundle =
        "{\"resourceType\": \"Bundle\", \"type\": \"searchset\", \"entry\": [{\"resource\": "
            + one
            + "}, {\"fullUrl\": \"urn:uuid:1\", \"resource\": {\"resourceType\": \"Patient\","
            + " \"name\": [{\"given\": [\"Juniper\"]}]}},"
            + " {\"resource\": {\"resourceType\": \"Organization\", \"id\": \"7\", \"name\":"
            + " \"West\"}}, {\"resource\": "
            + specimen
            + "}]}";
    Found found = Observed.found(Observed.season(), null, bundle).get(0);
    String shown = Observed.shown(found.observation());
    assertThat(found.problems().toString(), found.place(), is("/entry/0/resource"));
    for (String part :
        List.of(
            "'laboratory':'West'",
            "'specimen':'serum'",
            "'tube':'gel'",
            "'handling':['lipaemic']")) {
      assertThat(shown, containsString(part));
    }
    Found late =
        Observed.found(Observed.season(), null, bundle.replace("07:00:00Z", "09:00:00Z")).get(0);
    assertThat(late.problems().get(0).path(), is("/entry/0/resource/specimen"));
  }

  @Test
  void filesThatAreNoneAreRefusedWhole() {
    assertThat(Observed.against("").get(0).code().word(), is("empty-file"));
    assertThat(Observed.against("[]").get(0).path(), is("/resourceType"));
    assertThat(Observed.against("{").get(0).code().word(), is("not-json"));
    assertThat(
        Observed.against("{\"resourceType\": \"Patient\"}").get(0).path(), is("/resourceType"));
    assertThat(
        Observed.against("{\"resourceType\": \"Bundle\", \"type\": \"transaction\"}").get(0).path(),
        is("/type"));
    String many = (Observed.ordinary() + "\n").repeat(FhirFile.MOST + 1);
    assertThat(Observed.against(many).get(0).code().word(), is("too-many"));
  }
}
