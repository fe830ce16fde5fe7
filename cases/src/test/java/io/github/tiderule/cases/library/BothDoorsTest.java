package io.github.tiderule.cases.library;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.is;
import static org.junit.jupiter.api.Assertions.assertThrows;

import io.github.tiderule.engine.CycleBuilder;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.CycleRefused;
import io.github.tiderule.engine.validation.Violation;
import io.github.tiderule.format.cycle.CycleFile;
import io.github.tiderule.format.cycle.Reading;
import io.github.tiderule.format.problem.Problem;
import io.github.tiderule.rules.fact.Female;
import io.github.tiderule.rules.fact.FirstBlood;
import io.github.tiderule.rules.fact.assay.Unit;
import io.github.tiderule.rules.fact.observation.Progesterone;
import io.github.tiderule.rules.fact.semen.Dose;
import io.github.tiderule.rules.fact.semen.Semen;
import io.github.tiderule.rules.fact.semen.SemenPlan;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What the reader of files refuses, a record built in Java is refused for too, and as much. */
class BothDoorsTest {

  private static final Instant AS_OF = Instant.parse("2027-01-12T17:30:00Z");
  private static final Instant AT = Instant.parse("2027-01-08T07:00:00Z");
  private static final LocalDate BLOOD = LocalDate.of(2027, 1, 3);
  private static final LocalDate AHEAD = LocalDate.of(2040, 5, 1);

  private static Stream<Slip> slips() {
    return Stream.of(
            ObservationSlips.observations(),
            ObservationSlips.ofObservations(),
            SemenSlips.semen(),
            SemenSlips.insemination(),
            HistorySlips.history(),
            HistorySlips.background())
        .flatMap(one -> one);
  }

  private static List<Problem> refusedFile(String members) {
    String own = members.replace('\'', '"');
    StringBuilder file =
        new StringBuilder("{\"schema\": \"tiderule/cycle/1\", \"asOf\": \"2027-01-12T17:30:00Z\"");
    file.append(", \"zone\": \"Europe/Vienna\", ").append(own);
    if (!own.startsWith("\"firstBlood\"")) {
      file.append(", \"firstBlood\": {\"on\": \"2027-01-03\", \"certainty\": \"seen\"}");
    }
    if (!own.startsWith("\"observations\"")) {
      file.append(", \"observations\": []");
    }
    Reading reading = CycleFile.read(file.append('}').toString().getBytes(StandardCharsets.UTF_8));
    assertThat(reading.toString(), reading instanceof Reading.Refused, is(true));
    return ((Reading.Refused) reading).problems();
  }

  private static List<Violation> refused(UnaryOperator<CycleBuilder> built) {
    CycleBuilder whole =
        CycleRecord.on(AS_OF, ZoneId.of("Europe/Vienna")).firstBlood(FirstBlood.seen(BLOOD));
    CycleBuilder cycle = built.apply(whole);
    return assertThrows(CycleRefused.class, cycle::build).violations();
  }

  @ParameterizedTest
  @MethodSource("slips")
  void bothRefuseTheSame(Slip slip) {
    List<Problem> inFile = refusedFile(slip.members());
    List<Violation> inJava = refused(slip.built());
    assertThat(
        inFile.stream().map(one -> one.path() + " " + one.code().word()).toList().toString(),
        is("[" + slip.pointer() + " " + slip.code() + "]"));
    assertThat(
        inJava.stream().map(one -> one.field() + " " + one.code().word()).toList().toString(),
        is("[" + slip.field() + " " + slip.code() + "]"));
    if (!slip.code().equals("duplicate-id")) {
      assertThat(inJava.get(0).message(), is(inFile.get(0).message()));
    }
  }

  @Test
  void aRecordTellsAllThatIsWrongAtOnce() {
    CycleBuilder wrong =
        CycleRecord.on(AS_OF, ZoneId.of("Europe/Vienna"))
            .female(Female.unknown().bornOn(AHEAD))
            .add(Progesterone.of(-3, Unit.NG_PER_ML).drawn(AT))
            .semen(
                SemenPlan.of(Semen.CHILLED)
                    .doses(-3)
                    .dose(Dose.unknown().progressivelyMotilePercent(250)));
    CycleRefused refused = assertThrows(CycleRefused.class, wrong::build);
    assertThat(
        refused.getMessage(),
        is(
            "firstBlood: firstBlood is missing; female.bornOn: bornOn (2040-05-01) lies after asOf;"
                + " observations[0].value: value is -3, below zero; semenPlan.doses: doses is -3,"
                + " below zero; semenPlan.dose.progressivelyMotilePercent:"
                + " progressivelyMotilePercent is 250; it must be 0 to 100 %"));
  }
}
