package io.github.tiderule.format.fhir;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.not;

import ca.uhn.fhir.context.BaseRuntimeChildDefinition;
import ca.uhn.fhir.context.BaseRuntimeElementDefinition;
import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.parser.IParser;
import ca.uhn.fhir.parser.StrictErrorHandler;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.format.Documents;
import io.github.tiderule.format.json.Layout;
import io.github.tiderule.rules.fact.observation.Progesterone;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Date;
import java.util.List;
import java.util.Set;
import org.hl7.fhir.instance.model.api.IBase;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Observation.ObservationStatus;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.Quantity.QuantityComparator;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.Specimen;
import org.hl7.fhir.r4.model.StringType;
import org.junit.jupiter.api.Test;

/** What we write is FHIR to a library that knows all of it, and what it writes we read. */
class FhirExportTest {

  private static final FhirContext FHIR = FhirContext.forR4();

  private static IParser parser() {
    return FHIR.newJsonParser().setParserErrorHandler(new StrictErrorHandler());
  }

  private static Bundle bundle(CycleRecord cycle, Set<String> corrected, List<Progesterone> back) {
    return parser()
        .parseResource(
            Bundle.class,
            FhirExport.text(cycle, Observed.SEASON, corrected, back, Layout.INDENTED));
  }

  private static CycleRecord full() {
    return Observed.season(
        """
        {"id": "p1", "kind": "progesterone", "at": "2027-01-08T08:00:00+01:00",
         "reportedAt": "2027-01-08T16:00:00+01:00", "value": 0.2, "comparator": "<",
         "unit": "ng/mL", "method": "eclia", "laboratory": "North", "specimen": "plasma",
         "tube": "heparin", "handling": ["chilled-early", "lipaemic"], "asReported": "<0,2"}
        """,
        """
        {"id": "p2", "kind": "progesterone", "at": "2027-01-10T08:00:00+01:00", "value": 19.08,
         "unit": "nmol/L", "laboratory": "West", "specimen": "whole-blood"}
        """,
        """
        {"id": "p3", "kind": "progesterone", "at": "2027-01-11T08:00:00+01:00", "value": 6}
        """,
        """
        {"id": "l1", "kind": "lh", "at": "2027-01-11T08:00:00+01:00", "result": "positive"}
        """);
  }

  private static List<Observation> observations(Bundle bundle) {
    List<Observation> all = new ArrayList<>();
    bundle
        .getEntry()
        .forEach(
            entry -> {
              if (entry.getResource() instanceof Observation one) {
                all.add(one);
              }
            });
    return all;
  }

  @Test
  void theLibraryReadsWhatWeMean() {
    Bundle bundle = bundle(full(), Set.of("p2"), List.of());
    assertThat(bundle.getEntryFirstRep().getResource() instanceof Patient, is(true));
    Patient patient = (Patient) bundle.getEntryFirstRep().getResource();
    assertThat(patient.getNameFirstRep().getText(), is("Juniper"));
    List<Observation> all = observations(bundle);
    assertThat(all, hasSize(3));
    Observation first = all.get(0);
    assertThat(first.getStatus(), is(ObservationStatus.FINAL));
    assertThat(first.getIdentifierFirstRep().getValue(), is(Observed.SEASON + "/p1"));
    assertThat(first.getCode().getCodingFirstRep().getCode(), is("2839-9"));
    Quantity quantity = first.getValueQuantity();
    assertThat(quantity.getComparator(), is(QuantityComparator.LESS_THAN));
    assertThat(quantity.getValue().compareTo(new BigDecimal("0.2")), is(0));
    assertThat(quantity.getCode(), is("ng/mL"));
    assertThat(first.getMethod().getText(), is("eclia"));
    assertThat(
        first.getEffectiveDateTimeType().getValueAsString(), is("2027-01-08T08:00:00+01:00"));
    Specimen specimen = (Specimen) first.getSpecimen().getResource();
    assertThat(specimen.getType().getCodingFirstRep().getCode(), is("PLAS"));
    assertThat(first.getSubject().getReference(), is(bundle.getEntryFirstRep().getFullUrl()));
    assertThat(all.get(1).getStatus(), is(ObservationStatus.CORRECTED));
    assertThat(all.get(1).getCode().getCodingFirstRep().getCode(), is("14890-4"));
    assertThat(all.get(2).getCode().getCoding(), hasSize(0));
    assertThat(all.get(2).getValueQuantity().hasCode(), is(false));
  }

  @Test
  void nothingThatMustBeThereIsMissing() {
    Bundle bundle = bundle(full(), Set.of(), List.of());
    assertThat(missing(bundle, "Bundle"), is(List.of()));
    Observation without = observations(bundle).get(0);
    without.setStatus(null).setCode(null);
    assertThat(
        missing(without, "Observation").toString(), is("[Observation.status, Observation.code]"));
  }

  /** What the library's own definitions of the resources say must be there and is not. */
  private static List<String> missing(IBase element, String path) {
    List<String> missing = new ArrayList<>();
    BaseRuntimeElementDefinition<?> definition = FHIR.getElementDefinition(element.getClass());
    if (element instanceof Resource resource) {
      definition = FHIR.getResourceDefinition(resource);
    }
    if (definition == null) {
      return missing;
    }
    for (BaseRuntimeChildDefinition child : definition.getChildren()) {
      List<IBase> values =
          child.getAccessor().getValues(element).stream().filter(one -> !one.isEmpty()).toList();
      if (values.size() < child.getMin()) {
        missing.add(path + "." + child.getElementName());
      }
      values.forEach(one -> missing.addAll(missing(one, path + "." + child.getElementName())));
    }
    return missing;
  }

  @Test
  void whatWasTakenBackIsSaidToBeAnError() {
    Progesterone back = (Progesterone) full().observations().get(1);
    List<Observation> all = observations(bundle(Observed.season(), Set.of(), List.of(back)));
    assertThat(all.get(0).getStatus(), is(ObservationStatus.ENTEREDINERROR));
  }

  @Test
  void whatWeWriteWeReadAgain() {
    CycleRecord cycle = full();
    String text = FhirExport.text(cycle, Observed.SEASON, Set.of(), List.of(), Layout.ONE_LINE);
    List<Found> here = Observed.found(cycle, null, text);
    assertThat(here.get(0).outcome() + " " + here.get(0).id(), is("DUPLICATE p1"));
    assertThat(here.get(1).outcome() + " " + here.get(1).id(), is("DUPLICATE p2"));
    assertThat("no unit, no code", here.get(2).outcome(), is(Found.Outcome.REFUSED));
    List<Found> elsewhere =
        Observed.found(Observed.season(), null, text.replace(Observed.SEASON, "another"));
    Progesterone was = (Progesterone) cycle.observations().get(0);
    String shown = Observed.shown(elsewhere.get(0).observation());
    for (String part :
        List.of(
            "'comparator':'<'",
            "'value':0.2,",
            "'unit':'ng/mL'",
            "'method':'eclia'",
            "'laboratory':'North'",
            "'specimen':'plasma'",
            "'tube':'heparin'",
            "'handling':['chilled-early','lipaemic']",
            "'reportedAt':'2027-01-08T16:00:00+01:00'")) {
      assertThat(shown, shown.contains(part), is(true));
    }
    assertThat(was.id(), is(not(elsewhere.get(0).id())));
  }

  @Test
  void whatTheLibraryWritesWeRead() {
    Observation one =
        new Observation()
            .setStatus(ObservationStatus.FINAL)
            .setCode(
                new CodeableConcept().addCoding(new Coding("http://loinc.org", "14890-4", "P4")))
            .setSubject(new Reference().setDisplay("Juniper"))
            .setEffective(new DateTimeType("2027-01-10T08:00:00.000+01:00"))
            .setIssued(Date.from(Instant.parse("2027-01-10T14:00:00Z")))
            .setValue(
                new Quantity()
                    .setComparator(QuantityComparator.GREATER_OR_EQUAL)
                    .setValue(new BigDecimal("63.60"))
                    .setSystem("http://unitsofmeasure.org")
                    .setCode("nmol/L"));
    one.addPerformer().setDisplay("North");
    one.addIdentifier().setSystem("urn:x").setValue("17");
    one.addExtension("http://other.example/x", new StringType("whatever"));
    Specimen specimen = new Specimen();
    specimen.setId("s");
    specimen.getType().addCoding().setSystem(Sample.TYPES).setCode("SER");
    one.addContained(specimen);
    one.getSpecimen().setReference("#s");
    String alone = parser().encodeResourceToString(one);
    Bundle bundle = new Bundle().setType(Bundle.BundleType.SEARCHSET);
    bundle.addEntry().setResource(one);
    for (String file :
        List.of(alone, parser().encodeResourceToString(bundle), alone + "\n" + alone)) {
      Found found = Observed.found(Observed.season(), null, file).get(0);
      assertThat(found.problems().toString(), found.outcome(), is(Found.Outcome.NEW));
      String shown = Observed.shown(found.observation());
      for (String part :
          List.of("'value':63.60", "'comparator':'>'", "'unit':'nmol/L'", "'specimen':'serum'")) {
        assertThat(shown, shown.contains(part), is(true));
      }
    }
  }

  @Test
  void aFullCycleFileGivesABundle() {
    Bundle bundle = bundle(Documents.read(Documents.fullCycle()), Set.of(), List.of());
    assertThat(missing(bundle, "Bundle"), is(List.of()));
    assertThat(observations(bundle).isEmpty(), is(false));
  }
}
