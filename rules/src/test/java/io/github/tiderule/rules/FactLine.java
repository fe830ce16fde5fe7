package io.github.tiderule.rules;

import io.github.tiderule.rules.conclusion.Finding;
import io.github.tiderule.rules.conclusion.FindingKind;
import io.github.tiderule.rules.conclusion.reading.Held;
import io.github.tiderule.rules.conclusion.reading.Level;
import io.github.tiderule.rules.conclusion.reading.Question;
import io.github.tiderule.rules.fact.CaesareanDay;
import io.github.tiderule.rules.fact.CandidateDay;
import io.github.tiderule.rules.fact.Certainty;
import io.github.tiderule.rules.fact.EarlierCycle;
import io.github.tiderule.rules.fact.EarlierKind;
import io.github.tiderule.rules.fact.Female;
import io.github.tiderule.rules.fact.FirstBlood;
import io.github.tiderule.rules.fact.Forecast;
import io.github.tiderule.rules.fact.Moment;
import io.github.tiderule.rules.fact.Outcome;
import io.github.tiderule.rules.fact.OwnTemperature;
import io.github.tiderule.rules.fact.Treatment;
import io.github.tiderule.rules.fact.TreatmentForm;
import io.github.tiderule.rules.fact.TreatmentKind;
import io.github.tiderule.rules.fact.TreatmentPurpose;
import io.github.tiderule.rules.fact.Worded;
import io.github.tiderule.rules.fact.assay.Comparator;
import io.github.tiderule.rules.fact.assay.Handling;
import io.github.tiderule.rules.fact.assay.LaboratoryHours;
import io.github.tiderule.rules.fact.assay.Method;
import io.github.tiderule.rules.fact.assay.Series;
import io.github.tiderule.rules.fact.assay.Specimen;
import io.github.tiderule.rules.fact.assay.Tube;
import io.github.tiderule.rules.fact.assay.Unit;
import io.github.tiderule.rules.fact.observation.BodyTemperature;
import io.github.tiderule.rules.fact.observation.BreedingDone;
import io.github.tiderule.rules.fact.observation.Folds;
import io.github.tiderule.rules.fact.observation.LhTest;
import io.github.tiderule.rules.fact.observation.Neutrophils;
import io.github.tiderule.rules.fact.observation.OvaryFinding;
import io.github.tiderule.rules.fact.observation.OvaryScan;
import io.github.tiderule.rules.fact.observation.PregnancyScan;
import io.github.tiderule.rules.fact.observation.Progesterone;
import io.github.tiderule.rules.fact.observation.ProgesteroneBand;
import io.github.tiderule.rules.fact.observation.Radiograph;
import io.github.tiderule.rules.fact.observation.RefusalReason;
import io.github.tiderule.rules.fact.observation.ScanFinding;
import io.github.tiderule.rules.fact.observation.Sign;
import io.github.tiderule.rules.fact.observation.SignKind;
import io.github.tiderule.rules.fact.observation.Smear;
import io.github.tiderule.rules.fact.observation.Vaginoscopy;
import io.github.tiderule.rules.fact.semen.Dose;
import io.github.tiderule.rules.fact.semen.Route;
import io.github.tiderule.rules.fact.semen.Semen;
import io.github.tiderule.rules.fact.semen.SemenColour;
import io.github.tiderule.rules.fact.semen.SemenLook;
import io.github.tiderule.rules.fact.semen.SemenPlan;
import io.github.tiderule.rules.sentence.Part;
import io.github.tiderule.rules.sentence.Sentence;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * Facts written in a line of text, for tests: {@code now 10; p p1 5 2.1 ng/mL lab=A; sign s1 9
 * stands}. Times are days after the morning of first blood.
 */
final class FactLine {

  static final ZoneId ZONE = ZoneId.of("Europe/Vienna");
  private static final Instant FIRST_MORNING = Instant.parse("2027-01-03T07:00:00Z");
  private static final LocalDate FIRST_DAY = LocalDate.of(2027, 1, 3);

  private double now = 10;
  private FirstBlood blood = new FirstBlood(FIRST_DAY, Certainty.SEEN);
  private Female female = Female.unknown();
  private SemenPlan semen = SemenPlan.naturalUnlimited();
  private final List<Object> others = new ArrayList<>();

  private FactLine() {}

  /** Reads facts separated by semicolons; what a line does not say takes a usual default. */
  static List<Object> facts(String line) {
    FactLine facts = new FactLine();
    for (String part : line.split(";", -1)) {
      if (!part.isBlank() && !part.strip().equals("bare")) {
        facts.add(new Words(part.strip()));
      }
    }
    List<Object> all = new ArrayList<>(facts.others);
    if (line.strip().equals("bare")) {
      return all;
    }
    all.add(new Moment(at(facts.now), ZONE));
    all.add(facts.blood);
    all.add(facts.female);
    all.add(facts.semen);
    return all;
  }

  static Instant at(double day) {
    return FIRST_MORNING.plusSeconds(Math.round(day * 86_400));
  }

  static LocalDate date(double day) {
    return FIRST_DAY.plusDays((long) Math.floor(day));
  }

  private void add(Words w) {
    switch (w.get(0)) {
      case "now" -> now = w.number(1);
      case "blood" -> blood = new FirstBlood(date(w.number(1)), word(Certainty.values(), w.get(2)));
      case "noblood" -> blood = new FirstBlood(null, Certainty.UNKNOWN);
      case "female" -> female = female(w);
      case "semen" -> semen = semen(w);
      default -> others.add(other(w));
    }
  }

  private Object other(Words w) {
    return switch (w.get(0)) {
      case "p" -> progesterone(w);
      case "band" ->
          new ProgesteroneBand(w.get(1), at(w.number(2)), w.maybe(3), w.maybe(4), unit(w.get(5)));
      case "lh" -> new LhTest(w.get(1), at(w.number(2)), w.get(3).equals("positive"));
      case "smear" -> {
        @Nullable Neutrophils cells =
            w.get(4).equals("-") ? null : word(Neutrophils.values(), w.get(4));
        yield new Smear(w.get(1), at(w.number(2)), w.maybe(3), cells);
      }
      case "folds" -> new Vaginoscopy(w.get(1), at(w.number(2)), word(Folds.values(), w.get(3)));
      case "sign" ->
          new Sign(
              w.get(1),
              at(w.number(2)),
              word(SignKind.values(), w.get(3)),
              !w.has("no"),
              w.key("reason") == null ? null : word(RefusalReason.values(), w.key("reason")));
      case "scan" ->
          new OvaryScan(w.get(1), at(w.number(2)), word(OvaryFinding.values(), w.get(3)));
      case "bred" ->
          new BreedingDone(
              w.get(1),
              at(w.number(2)),
              word(Semen.values(), w.get(3)),
              word(Route.values(), w.get(4)),
              w.key("sire"),
              null);
      case "lab" -> LaboratoryHours.unknown().reachable(!w.has("unreachable"));
      case "treat" -> treatment(w);
      case "earlier" ->
          new EarlierCycle(
              date(w.number(1)),
              w.maybe(2) == null ? null : date(w.number(1) + w.number(2)),
              null,
              null,
              null,
              null,
              w.has("broken-off") ? EarlierKind.BROKEN_OFF : null);
      case "v" -> Level.value(w.get(1), at(w.number(2)), w.number(3), w.factor(), w.series());
      case "below" -> Level.below(w.get(1), at(w.number(2)), w.number(3), w.factor(), w.series());
      case "above" -> Level.above(w.get(1), at(w.number(2)), w.number(3), w.factor(), w.series());
      case "kit" -> kit(w);
      case "finding" ->
          new Finding(
              FindingKind.valueOf(w.get(1)),
              w.ids(2),
              Sentence.quoted("finding " + w.get(1) + " for a test"));
      case "held" -> new Held(w.get(1), Sentence.of("{} is held", Part.key(w.get(1))));
      case "question" -> new Question(w.get(1), Sentence.of("a question for a test"), List.of());
      case "forecast" -> forecast(w.number(1), w.number(2), w.number(3), w.keyOr("fit", 0.5));
      case "day" -> day(w);
      case "pregnancy-scan" ->
          new PregnancyScan(
              w.get(1),
              at(w.number(2)),
              word(ScanFinding.values(), w.get(3)),
              List.of(),
              List.of(),
              w.keyCount("fetuses"));
      case "radiograph" ->
          new Radiograph(
              w.get(1), at(w.number(2)), w.keyCount("fetuses"), w.has("skeleton") ? true : null);
      case "temperature" -> new BodyTemperature(w.get(1), at(w.number(2)), w.number(3));
      case "own" -> new OwnTemperature(w.get(1), at(w.number(2)), (int) w.number(3), w.number(4));
      case "outcome" -> outcome(w);
      case "before" -> before(w);
      case "caesarean" ->
          new CaesareanDay(date(60), (int) w.number(1), w.number(2), w.keyOr("begun", 0.1));
      case "look" -> new SemenLook(word(SemenColour.values(), w.get(1)), !w.has("other"));
      case "ready", "usable", "extender", "arrived", "underdose" -> SheetFacts.of(w, at(now));
      case "asked", "test", "whelped", "stud" -> KennelFacts.of(w);
      default -> throw new IllegalArgumentException("no such fact: " + w);
    };
  }

  private static Treatment treatment(Words w) {
    @Nullable Double out = w.keyNumber("out");
    return new Treatment(
        word(TreatmentKind.values(), w.get(1)),
        date(w.number(2)),
        said(TreatmentForm.values(), w),
        said(TreatmentPurpose.values(), w),
        out == null ? null : date(out));
  }

  private static <T extends Worded> @Nullable T said(T[] values, Words w) {
    return Arrays.stream(values).filter(value -> w.has(value.word())).findFirst().orElse(null);
  }

  private static Outcome outcome(Words w) {
    @Nullable Double whelped = w.keyNumber("whelped");
    return new Outcome(
        w.has("empty") ? false : null,
        whelped == null ? null : date(whelped),
        w.keyCount("litter"),
        null);
  }

  /** An earlier season, with days after its first blood. */
  private static EarlierCycle before(Words w) {
    @Nullable Double shift = w.keyNumber("shift");
    @Nullable Double whelped = w.keyNumber("whelped");
    @Nullable Double ovulated = w.keyNumber("ovulated");
    double from = w.number(1);
    return new EarlierCycle(
        date(from),
        ovulated == null ? null : date(from + ovulated),
        shift == null ? null : date(from + shift),
        whelped == null ? null : date(from + whelped),
        null,
        null);
  }

  private static Progesterone progesterone(Words w) {
    @Nullable String laboratory = w.key("lab");
    @Nullable String method = w.key("method");
    @Nullable String specimen = w.key("specimen");
    @Nullable String tube = w.key("tube");
    @Nullable String handling = w.key("handling");
    @Nullable String limit = w.key("limit");
    @Nullable String reported = w.key("reported");
    @Nullable String words = w.key("as");
    return new Progesterone(
        w.get(1),
        at(w.number(2)),
        reported == null ? null : at(Double.parseDouble(reported)),
        w.number(3),
        limit == null ? null : Comparator.valueOf(limit.toUpperCase(Locale.ROOT)),
        unit(w.get(4)),
        word(Method.values(), method == null ? "ria" : method),
        laboratory,
        specimen == null ? null : word(Specimen.values(), specimen),
        tube == null ? null : word(Tube.values(), tube),
        handling == null ? List.of() : List.of(word(Handling.values(), handling)),
        words == null ? null : words.replace('_', ' '));
  }

  private static Level kit(Words w) {
    @Nullable Double high = w.maybe(4);
    return Level.band(
        w.get(1),
        at(w.number(2)),
        w.number(3),
        high == null ? Double.POSITIVE_INFINITY : high,
        1,
        Series.of("colour kit", Method.UNKNOWN));
  }

  private static Female female(Words w) {
    @Nullable String born = w.key("born");
    return new Female(
        "juniper",
        null,
        null,
        w.keyNumber("kg"),
        born == null ? null : LocalDate.parse(born),
        w.keyCount("litters"),
        w.keyCount("caesareans"),
        w.keyCount("missed"));
  }

  private static SemenPlan semen(Words w) {
    @Nullable Dose dose =
        w.key("total") == null && w.key("motile") == null
            ? null
            : new Dose(w.keyNumber("total"), w.keyNumber("motile"), w.keyNumber("normal"));
    return new SemenPlan(
        word(Semen.values(), w.get(1)),
        word(Route.values(), w.get(2)),
        w.keyCount("doses"),
        null,
        w.keyNumber("age"),
        dose,
        List.of(),
        null,
        w.keyNumber("travel"));
  }

  private Forecast forecast(double daysToMedian, double width, double noOvulation, double fit) {
    double median = now + daysToMedian;
    return new Forecast(
        at(median - width / 2),
        at(median - width / 4),
        at(median),
        at(median + width / 4),
        at(median + width / 2),
        daysToMedian,
        width,
        noOvulation,
        0.05,
        0.01,
        0.01,
        noOvulation / 2,
        fit);
  }

  private static CandidateDay day(Words w) {
    double day = w.number(1);
    return new CandidateDay(
        date(day),
        at(day),
        at(day + 0.5),
        w.keyOr("share", 0.5),
        w.keyOr("share", 0.5) / 2,
        w.keyOr("ov", 2),
        w.keyOr("pov", 0.95),
        w.keyOr("closed", 0.0),
        w.keyOr("age", 0.0));
  }

  private static @Nullable Unit unit(String text) {
    return text.equals("-") ? null : word(Unit.values(), text);
  }

  static <T extends Worded> T word(T[] values, String text) {
    return Arrays.stream(values)
        .filter(value -> value.word().equals(text))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no such word: " + text));
  }
}
