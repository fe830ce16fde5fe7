package io.github.tiderule.api.command;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.emptyString;
import static org.hamcrest.Matchers.is;

import io.github.tiderule.api.command.stream.ExitStatus;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.format.Documents;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FhirCommandTest {

  @TempDir private Path directory = Path.of("");

  private static String observation(String status, String value) {
    return """
    {"resourceType": "Observation", "id": "17", "status": "%s",
     "code": {"coding": [{"system": "http://loinc.org", "code": "2839-9"}]},
     "effectiveDateTime": "2027-01-05T08:30:00+01:00",
     "valueQuantity": {"value": %s, "system": "http://unitsofmeasure.org", "code": "ng/mL"}}
    """
        .formatted(status, value);
  }

  private Ran run(String file, String... more) {
    String[] all = new String[5 + more.length];
    all[0] = "fhir";
    all[1] = "import";
    all[2] = "-";
    all[3] = "--into";
    all[4] = directory.resolve("cycle.json").toString();
    System.arraycopy(more, 0, all, 5, more.length);
    return Ran.with(file, all);
  }

  private CycleRecord season() throws IOException {
    return Documents.read(Files.readString(directory.resolve("cycle.json")));
  }

  @Test
  void aCorrectionStandsInThePlaceOfTheOld() throws IOException {
    Path cycle = Files.writeString(directory.resolve("cycle.json"), Documents.fullCycle());
    int before = season().observations().size();
    Ran preview = run(observation("final", "0.4"));
    assertThat(preview.status(), is(ExitStatus.DONE));
    assertThat(preview.out(), containsString("the Observation: new fhir-17-"));
    assertThat(preview.err(), containsString("1 new, 0 correction"));
    assertThat(Files.readString(cycle), is(Documents.fullCycle()));
    run(observation("final", "0.4"), "--save");
    assertThat(season().observations().size(), is(before + 1));
    Ran corrected = run(observation("corrected", "0.7"), "--save");
    assertThat(corrected.out(), containsString("It was 0.4 ng/mL."));
    assertThat(season().observations().size(), is(before + 1));
    assertThat(Files.readString(cycle), containsString("\"value\": 0.7".replace(": ", " : ")));
    String once = Files.readString(cycle);
    assertThat(
        run(observation("corrected", "0.7"), "--save").err(), containsString("nothing to save"));
    assertThat(Files.readString(cycle), is(once));
    run(observation("entered-in-error", "0.7"), "--save");
    assertThat(season().observations().size(), is(before));
    assertThat(season().observations(), is(Documents.read(Documents.fullCycle()).observations()));
  }

  @Test
  void whatIsGivenOutIsRecognised() throws IOException {
    Path cycle = Files.writeString(directory.resolve("cycle.json"), Documents.fullCycle());
    Ran given = Ran.with("", "fhir", "export", cycle.toString());
    assertThat(given.status(), is(ExitStatus.DONE));
    assertThat(given.engines(), is(0));
    Ran again = run(given.out(), "--save");
    assertThat(again.out(), containsString(": duplicate p1"));
    assertThat(again.err(), containsString("0 new, 0 correction"));
    assertThat(Files.readString(cycle), is(Documents.fullCycle()));
  }

  @Test
  void refusesFilesThatAreNone() throws IOException {
    Files.writeString(directory.resolve("cycle.json"), Documents.fullCycle());
    Ran none = run("{\"resourceType\": \"Patient\"}");
    assertThat(none.status(), is(ExitStatus.REFUSED));
    assertThat(none.err(), containsString("/resourceType"));
    assertThat(none.out(), is(emptyString()));
    Ran some = run(observation("final", "\"x\"") + "\n", "--save");
    assertThat(some.status(), is(ExitStatus.SOME_REFUSED));
    assertThat(some.out(), containsString("  /valueQuantity/value: value is \"x\""));
    assertThat(Ran.with("", "fhir").status(), is(ExitStatus.REFUSED));
    assertThat(
        Ran.with("", "fhir", "import", "x.json").err(), containsString("Missing required option"));
    assertThat(
        Ran.with("", "fhir", "export", directory.resolve("none.json").toString()).status(),
        is(ExitStatus.REFUSED));
  }
}
