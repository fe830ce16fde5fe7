package io.github.tiderule.api.page.form;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.nullValue;

import io.github.tiderule.api.words.Texts;
import io.github.tiderule.format.node.Node;
import io.github.tiderule.format.node.NodeText;
import io.github.tiderule.format.problem.Problem;
import io.github.tiderule.format.problem.ProblemCode;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** What is seen of a pregnancy, as it is typed. */
class PregnancyFieldsTest {

  private static final Texts TEXTS = Texts.ofPages(Locale.ROOT);
  private static final ZoneId VIENNA = ZoneId.of("Europe/Vienna");
  private static final Instant NOW = Instant.parse("2027-03-01T12:00:00Z");

  private static Typed typed(String... fields) {
    Typed typed = Typed.nothing().fill("at", "2027-02-20T09:00");
    for (int i = 0; i < fields.length; i += 2) {
      typed.fill(fields[i], fields[i + 1]);
    }
    return typed;
  }

  private static @Nullable String read(String kind, Typed typed) {
    Node.Members read = ObservationForm.of(kind, VIENNA, TEXTS).read("a1", typed, NOW);
    return read == null ? null : NodeText.of(read).replace(" ", "");
  }

  private static List<String> faults(String kind, Typed typed) {
    assertThat(read(kind, typed), is(nullValue()));
    return typed.faults().stream().map(Typed.Fault::field).toList();
  }

  @Test
  void measuresAreReadWithCommaAndPointAndOneForEachFetus() {
    for (String measures : List.of("21,4 22.0", "21.4; 22.0", "21,4, 22,0", " 21.4;22,0 ")) {
      String read =
          read(
              "scan",
              typed("finding", "pregnant", "fetuses", "5", "innerChorionicCavityMm", measures));
      assertThat(measures, read, containsString("\"innerChorionicCavityMm\":[21.4,22.0]"));
      assertThat(read, containsString("\"fetuses\":5"));
    }
  }

  @Test
  void whatIsNoMeasureIsRefusedByItsField() {
    Typed typed = typed("finding", "pregnant", "biparietalMm", "21.4 about 22");
    assertThat(faults("scan", typed), contains("biparietalMm"));
    assertThat(typed.faults().get(0).text(), containsString("\"about\""));
    assertThat(typed.value("biparietalMm"), is("21.4 about 22"));
  }

  @Test
  void anEmptyScanWithFetusesIsRefused() {
    assertThat(
        faults("scan", typed("finding", "not-pregnant", "fetuses", "3")), contains("finding"));
    assertThat(
        read("scan", typed("finding", "not-pregnant", "fetuses", "0")),
        containsString("\"fetuses\":0"));
    assertThat(faults("scan", typed()), contains("finding"));
  }

  @Test
  void aRadiographSaysAtLeastOneThing() {
    assertThat(faults("radiograph", typed()), contains("fetuses"));
    assertThat(
        read("radiograph", typed("skeletonSeen", "no")), containsString("\"skeletonSeen\":false"));
    assertThat(read("radiograph", typed("fetuses", "6")), containsString("\"fetuses\":6}"));
  }

  @Test
  void temperatureIsNeededAndReadEitherWay() {
    assertThat(faults("temperature", typed()), contains("celsius"));
    assertThat(read("temperature", typed("celsius", "37,2")), containsString("\"celsius\":37.2"));
    assertThat(read("temperature", typed("celsius", "36.9")), containsString("\"celsius\":36.9"));
  }

  @Test
  void fahrenheitIsAnsweredBesideTheField() {
    Typed typed = typed("celsius", "98.6");
    typed.refuse(
        List.of(new Problem("/celsius", ProblemCode.OUT_OF_RANGE, "98.6 is too much", "")), TEXTS);
    assertThat(Objects.requireNonNull(typed.fault("celsius")).text(), containsString("°F"));
  }

  @Test
  void aProblemWithOneMeasureStandsByAllOfThem() {
    Typed typed = typed("biparietalMm", "21 400");
    typed.refuse(
        List.of(new Problem("/biparietalMm/1", ProblemCode.OUT_OF_RANGE, "400 is", "")), TEXTS);
    assertThat(typed.faults().get(0).field(), is("biparietalMm"));
  }

  @Test
  void theFormIsFilledInWithWhatWasRead() {
    Typed typed = typed("finding", "heartbeats", "fetuses", "4", "biparietalMm", "21,4 22");
    ObservationForm form = ObservationForm.of("scan", VIENNA, TEXTS);
    Node.Members scan = Objects.requireNonNull(form.read("g1", typed, NOW));
    Typed again = form.filled(scan);
    assertThat(again.value("biparietalMm"), is("21.4; 22"));
    assertThat(again.value("fetuses"), is("4"));
    assertThat(form.read("g1", again, NOW), is(scan));
  }
}
