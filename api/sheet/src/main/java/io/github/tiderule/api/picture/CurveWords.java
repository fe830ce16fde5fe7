package io.github.tiderule.api.picture;

import io.github.tiderule.api.report.text.PlainNumber;
import io.github.tiderule.api.report.text.Telling;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.api.words.Words;
import io.github.tiderule.engine.advice.course.Ovulation;
import io.github.tiderule.engine.advice.course.Quantiles;
import io.github.tiderule.rules.fact.assay.Method;
import io.github.tiderule.rules.fact.assay.Series;
import io.github.tiderule.rules.fact.assay.Unit;
import io.github.tiderule.rules.fact.observation.Observation;
import io.github.tiderule.rules.fact.observation.Progesterone;
import io.github.tiderule.rules.fact.observation.ProgesteroneBand;
import io.github.tiderule.rules.sentence.Part;
import io.github.tiderule.rules.sentence.Sentence;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What a curve says in words: its title, its description, and the names of what is on it. */
public final class CurveWords {

  private static final Texts TEXTS = Texts.ofReports();

  private static final int LONGEST_NAME = 26;

  private final CurveInput input;

  CurveWords(CurveInput input) {
    this.input = input;
  }

  /** The title of a curve. */
  static String title(CurveInput input) {
    return TEXTS.say(
        "curve.title", Telling.who(input.cycle().female().name(), input.advice().femaleId()));
  }

  /** What a curve shows, for those who do not see it. */
  static String description(CurveInput input, TimeScale times) {
    Words written = input.words();
    List<String> words = new ArrayList<>();
    words.add(
        TEXTS.say(
            "curve.shows", written.day(times.first()), written.day(times.end().minusDays(1))));
    List<Progesterone> values = input.all(Progesterone.class);
    if (values.isEmpty()) {
      words.add(TEXTS.say("curve.no-value"));
    } else {
      Progesterone last = values.get(values.size() - 1);
      words.add(
          TEXTS.say(
              "curve.latest",
              TEXTS.count("curve.values", values.size()),
              new CurveWords(input).of(last)));
    }
    Quantiles peak = input.advice().timing().lhPeak();
    if (peak != null) {
      words.add(TEXTS.say("curve.peak-around", written.about(peak.median())));
    }
    Ovulation ovulation = input.advice().timing().ovulation();
    if (ovulation != null) {
      words.add(
          TEXTS.say(
              "curve.ovulation-around",
              written.about(ovulation.median()),
              written.about(ovulation.p05()),
              written.about(ovulation.p95())));
    }
    List<PlanStrips.Window> plan = PlanStrips.windows(input);
    if (!plan.isEmpty()) {
      words.add(
          TEXTS.say(
              "curve.planned",
              input.telling().moments(plan.stream().map(PlanStrips.Window::best).toList())));
    }
    words.add(TEXTS.say("curve.table"));
    return String.join(" ", words);
  }

  /** A value with both units, its series, its time and how it is taken. */
  String of(Progesterone value) {
    return level(value)
        + ", "
        + moment(value.at())
        + ", "
        + value.series().words()
        + use(input, value.id());
  }

  private String level(Progesterone value) {
    String comparator = value.comparator() == null ? "" : value.comparator().word();
    return value.statedUnit() == null
        ? TEXTS.say("curve.without-unit", comparator + plain(value.value()))
        : comparator + input.telling().say(Sentence.of("{}", Part.both(value.ngPerMl())));
  }

  /** A kit's band with its time and how it is taken. */
  String of(ProgesteroneBand band) {
    return TEXTS.say("curve.band", number(band), moment(band.at())) + use(input, band.id());
  }

  /** How an observation is taken, to be added to what it is; nothing where it is simply taken. */
  static String use(CurveInput input, String observation) {
    String use = input.use(observation);
    return input.taken(observation) ? "" : ", " + TEXTS.word("curve.use", use);
  }

  /** When something was, as in {@code Thu 14 Jan 2027, 08:00}. */
  String moment(Instant at) {
    return input.words().moment(local(at));
  }

  OffsetDateTime local(Instant at) {
    return at.atZone(input.cycle().zone()).toOffsetDateTime();
  }

  /** A value as it was reported, its unit named where it is not ng/mL. */
  String number(Progesterone value) {
    String number =
        (value.comparator() == null ? "" : value.comparator().word()) + plain(value.value());
    Unit unit = value.statedUnit();
    return unit == null
        ? TEXTS.say("curve.unit-asked", number)
        : unit == Unit.NMOL_PER_L ? number + " nmol" : number;
  }

  /** The edges of a band as they were reported. */
  String number(ProgesteroneBand band) {
    Double low = band.low();
    Double high = band.high();
    String unit = unit(band);
    if (low == null) {
      return high == null ? TEXTS.say("curve.no-edges") : "<" + plain(high) + unit;
    }
    return (high == null ? ">" + plain(low) : plain(low) + "–" + plain(high)) + unit;
  }

  private static String unit(ProgesteroneBand band) {
    @Nullable Unit unit = band.statedUnit();
    return unit == null ? TEXTS.say("curve.unit-missing") : unit == Unit.NMOL_PER_L ? " nmol" : "";
  }

  /** How an observation is taken, short enough for a label. */
  static String brief(String use) {
    return TEXTS.word("curve.use.brief", use);
  }

  /** A series, cut where its laboratory's name is long. */
  static String brief(Series series) {
    String laboratory =
        series.laboratory().isEmpty() ? TEXTS.say("curve.laboratory-unnamed") : series.laboratory();
    int letters = laboratory.codePointCount(0, laboratory.length());
    String cut =
        letters <= LONGEST_NAME
            ? laboratory
            : laboratory.substring(0, laboratory.offsetByCodePoints(0, LONGEST_NAME - 1)) + "…";
    return cut
        + ", "
        + (series.method() == Method.UNKNOWN
            ? TEXTS.say("curve.method-unknown")
            : series.method().word());
  }

  /** A number as it was written, without idle zeros. */
  private String plain(double value) {
    return plain(input.words(), value);
  }

  /** A number as it was written, without idle zeros. */
  static String plain(Words words, double value) {
    return words.number(PlainNumber.of(value));
  }

  /** What kind of thing an observation is, and what it showed. */
  String what(Observation observation) {
    return new FindingWords(this, input.words()).of(observation);
  }
}
