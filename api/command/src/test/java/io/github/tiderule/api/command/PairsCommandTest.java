package io.github.tiderule.api.command;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.instanceOf;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.startsWith;

import io.github.tiderule.api.command.stream.ExitStatus;
import io.github.tiderule.rules.RuleBase;
import io.github.tiderule.rules.parameter.OverlayReader;
import io.github.tiderule.rules.parameter.OverlayReading;
import org.junit.jupiter.api.Test;

class PairsCommandTest {

  private static final String TABLE =
      """
      value,unit,other,otherUnit
      2.1,ng/mL,3,ng/mL
      2.8,ng/mL,4,ng/mL
      3.5,ng/mL,15.9,nmol/L
      4.2,ng/mL,6,ng/mL
      5.6,ng/mL,8,ng/mL
      0.4,ng/mL,0.6,ng/mL
      7.0,ng/mL,10,ng/mL
      8.4,ng/mL,12,ng/mL
      10.5,ng/mL,15,ng/mL
      14,ng/mL,3,ng/mL
      """;

  private static Ran run(String table, String... more) {
    String[] all = new String[more.length + 1];
    all[0] = "pairs";
    System.arraycopy(more, 0, all, 1, more.length);
    return Ran.with(table, all);
  }

  private static Ran dry(String table) {
    return run(
        table,
        "--method",
        "dry-slide",
        "--against",
        "ria",
        "--by",
        "Dr. A, B",
        "--since",
        "2027-01-08",
        "-");
  }

  @Test
  void proposesWhatAProtocolTakes() {
    Ran ran = dry(TABLE);
    assertThat(ran.err(), is(""));
    assertThat(ran.status(), is(ExitStatus.DONE));
    assertThat(ran.out(), startsWith("# By 8 pairs this laboratory (dry-slide) reads 0.7"));
    assertThat(ran.out(), containsString("Far from the others, so left out: pair 10."));
    assertThat(ran.out(), containsString("Too low to tell, so left out: pair 6."));
    OverlayReading read =
        OverlayReader.read("learned.csv", ran.out(), RuleBase.load().parameters());
    assertThat(read, is(instanceOf(OverlayReading.Read.class)));
    assertThat(((OverlayReading.Read) read).overlay().changes().get(0).by(), is("Dr. A, B"));
  }

  @Test
  void refusesWhatTellsNoScale() {
    Ran few = dry("value,unit,other,otherUnit\n2.1,ng/mL,3,ng/mL\n");
    assertThat(few.status(), is(ExitStatus.REFUSED));
    assertThat(few.err(), is("1 pairs count, and 8 are needed.\n"));
    Ran unit = dry("value,unit,other,otherUnit\n" + "12,ng/mL,5,ng/mL\n".repeat(9));
    assertThat(unit.status(), is(ExitStatus.REFUSED));
    assertThat(unit.err(), containsString("Look for another unit or method"));
    Ran wrong = dry("value,unit,other,otherUnit\n<2,ng/mL,3,ng/dL\n");
    assertThat(wrong.status(), is(ExitStatus.REFUSED));
    assertThat(wrong.err(), containsString("the value is \"<2\""));
    assertThat(wrong.err(), containsString("the unit is \"ng/dL\""));
    assertThat(dry("a,b\n").err(), containsString("the heading is not value,unit,other,otherUnit"));
  }

  @Test
  void asksForWhatIsMissing() {
    Ran reference =
        run(TABLE, "--method", "ria", "--against", "clia", "--by", "A", "--since", "2027-01-08");
    assertThat(reference.status(), is(ExitStatus.REFUSED));
    assertThat(reference.err(), containsString("exchange the two"));
    Ran nobody =
        run(TABLE, "--method", "clia", "--against", "ria", "--by", " ", "--since", "2027-01-08");
    assertThat(nobody.err(), containsString("--by wants the name"));
    Ran day = run(TABLE, "--method", "clia", "--against", "ria", "--by", "A", "--since", "today");
    assertThat(day.err(), containsString("write it like 2027-01-08"));
    Ran method =
        run(TABLE, "--method", "slide", "--against", "ria", "--by", "A", "--since", "2027-01-08");
    assertThat(method.err(), containsString("it can be ria, clia"));
  }
}
