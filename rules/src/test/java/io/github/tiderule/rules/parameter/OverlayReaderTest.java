package io.github.tiderule.rules.parameter;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.instanceOf;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.startsWith;

import io.github.tiderule.rules.RuleBase;
import io.github.tiderule.rules.parameter.OverlayFault.Kind;
import java.util.List;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;

class OverlayReaderTest {

  private static final Parameters PARAMETERS = Parameters.load();
  private static final String HEADING = "id,value,reason,by,since\n";
  private static final String GOOD = "findings.rise.floor,1.6,reads high,Dr A,2026-12-01\n";

  private static OverlayReading read(String text) {
    return OverlayReader.read("clinic.csv", text, PARAMETERS);
  }

  private static Overlay overlay(String text) {
    return ((OverlayReading.Read) read(text)).overlay();
  }

  private static List<String> faults(String text) {
    return ((OverlayReading.Refused) read(text))
        .faults().stream()
            .map(fault -> fault.line() + " " + fault.column() + " " + fault.kind())
            .toList();
  }

  @Test
  void aProtocolIsNamedHashedAndSorted() {
    Overlay overlay =
        overlay(
            "\uFEFF# ours\n\n"
                + HEADING
                + "reading.zero-limit,0.3,\"so, it reads\",Dr A,2026-12-02\n"
                + GOOD);
    assertThat(overlay.name(), is("clinic.csv"));
    assertThat(overlay.fingerprint(), startsWith("sha256:"));
    assertThat(
        overlay.changes().stream().map(Overlay.Change::id).toList(),
        contains("findings.rise.floor", "reading.zero-limit"));
    assertThat(overlay.changes().get(0).usual(), is(PARAMETERS.value("findings.rise.floor")));
    assertThat(overlay(HEADING + GOOD).fingerprint(), is(not(overlay.fingerprint())));
  }

  @Test
  void everyFaultIsNamedAtOnceWithItsLine() {
    assertThat(
        faults(
            HEADING
                + "# a note\n"
                + "findings.rise.flor,1.6,a,b,2026-12-01\n"
                + "findings.rise.floor,9,a,b,2026-12-01\n"
                + "findings.rise.floor,1.6,\"two\nlines\",,2026-12-01\n"
                + "findings.base.left,Infinity,a,b,today\n"
                + "findings.fall.to,0x1p1,"
                + "a".repeat(301)
                + ",b\u202E,2026-12-01\n"
                + "findings.fall.days,3\n"),
        contains(
            "3 id UNKNOWN_PARAMETER",
            "4 value OUT_OF_RANGE",
            "5 id REPEATED_PARAMETER",
            "5 reason ILLEGAL_CHARACTER",
            "5 by EMPTY_TEXT",
            "7 value NOT_A_NUMBER",
            "7 since NOT_A_DATE",
            "8 value NOT_A_NUMBER",
            "8 reason TOO_LONG",
            "8 by ILLEGAL_CHARACTER",
            "9  WRONG_CELL_COUNT"));
  }

  @Test
  void whatIsNoProtocolIsRefused() {
    assertThat(faults(""), contains("0  EMPTY"));
    assertThat(faults(HEADING), contains("0  EMPTY"));
    assertThat(faults("# only a note\n"), contains("0  EMPTY"));
    assertThat(faults("id;value;reason;by;since\n"), contains("1  WRONG_HEADING"));
    assertThat(faults("value,id,reason,by,since\n" + GOOD), contains("1  WRONG_HEADING"));
    assertThat(faults(HEADING + "\"findings.rise.floor"), contains("0  NOT_A_TABLE"));
    assertThat(read(HEADING + GOOD), is(instanceOf(OverlayReading.Read.class)));
  }

  /** Messages are shown in a terminal; what a file holds must not act there. */
  @Test
  void whatOneCannotSeeIsWrittenOut() {
    String acts = "a\u001b[2J\u202Eb\u2028";
    for (String text :
        List.of(acts, HEADING + acts + ",1" + acts + ",a,b," + acts + "\n", HEADING + acts)) {
      OverlayReading.Refused refused = (OverlayReading.Refused) read(text);
      for (OverlayFault fault : refused.faults()) {
        assertThat(fault.message(), fault.message().matches("[ -~…]*"), is(true));
      }
    }
    assertThat(
        faults(HEADING + GOOD.replace("reads high", "reads\u2028high")),
        contains("2 reason ILLEGAL_CHARACTER"));
  }

  @Test
  void everyParameterTakesTheEndsOfItsRangeAndNothingBeyond() {
    int beyond = 0;
    for (Parameter parameter : PARAMETERS.all()) {
      for (double end : new double[] {parameter.min(), parameter.max()}) {
        String line = HEADING + parameter.id() + "," + end + ",a,b,2026-12-01\n";
        assertThat(line, read(line), is(instanceOf(OverlayReading.Read.class)));
      }
      String line = HEADING + parameter.id() + "," + (parameter.max() + 1) + ",a,b,2026-12-01\n";
      assertThat(faults(line), contains("2 value " + Kind.OUT_OF_RANGE));
      beyond++;
    }
    assertThat(beyond, is(PARAMETERS.all().size()));
  }

  @Test
  void rulesTakeTheLocalValueAndKeepTheirOwnFingerprint() {
    RuleBase rules = RuleBase.load();
    RuleBase local = rules.with(overlay(HEADING + GOOD));
    assertThat(local.parameters().value("findings.rise.floor"), is(1.6));
    assertThat(rules.parameters().value("findings.rise.floor"), is(1.5));
    assertThat(local.fingerprint(), is(rules.fingerprint()));
    assertThat(local.overlay().isPresent(), is(true));
    Assertions.assertThrows(
        IllegalArgumentException.class, () -> local.with(overlay(HEADING + GOOD)));
  }
}
