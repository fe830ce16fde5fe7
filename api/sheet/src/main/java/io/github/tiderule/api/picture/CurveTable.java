package io.github.tiderule.api.picture;

import io.github.tiderule.api.words.Texts;
import io.github.tiderule.rules.fact.Digits;
import io.github.tiderule.rules.fact.assay.Unit;
import io.github.tiderule.rules.fact.observation.Observation;
import io.github.tiderule.rules.fact.observation.Progesterone;
import io.github.tiderule.rules.fact.observation.ProgesteroneBand;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.jspecify.annotations.Nullable;

/** The numbers of a curve as rows, in time order: all of them, those left off the picture too. */
final class CurveTable {

  private static final Texts TEXTS = Texts.ofReports();

  private final CurveInput input;
  private final CurveWords words;

  CurveTable(CurveInput input) {
    this.input = input;
    this.words = new CurveWords(input);
  }

  List<CurveRow> rows() {
    return input.cycle().observations().stream().map(this::row).toList();
  }

  private CurveRow row(Observation one) {
    if (one instanceof Progesterone value) {
      String sign = value.comparator() == null ? "" : value.comparator().word();
      return row(
          one,
          FindingWords.kind(one),
          sign + plain(value.value()) + unit(value.statedUnit()),
          value.statedUnit() == null ? "" : sign + level(value.ngPerMl()),
          value.statedUnit() == null ? "" : sign + level(nmol(value.ngPerMl())),
          value.series().words());
    }
    if (one instanceof ProgesteroneBand band) {
      return row(
          one,
          FindingWords.kind(one),
          edges(band, edge -> edge, this::plain) + unit(band.statedUnit()),
          converted(band, edge -> edge),
          converted(band, CurveTable::nmol),
          "");
    }
    return row(one, FindingWords.kind(one), FindingWords.whole(one, input.words()), "", "", "");
  }

  private CurveRow row(
      Observation one, String what, String asReported, String ng, String nmol, String series) {
    return new CurveRow(
        one.id(),
        words.local(one.at()),
        one instanceof Progesterone || one instanceof ProgesteroneBand,
        what,
        asReported,
        ng,
        nmol,
        series,
        input.use(one.id()));
  }

  private String plain(double number) {
    return CurveWords.plain(input.words(), number);
  }

  private String level(double number) {
    return input.words().number(Digits.concentration(number));
  }

  private static double nmol(double ngPerMl) {
    return Unit.NMOL_PER_L.fromNgPerMl(ngPerMl);
  }

  private static String unit(@Nullable Unit unit) {
    return unit == null ? TEXTS.say("curve.no-unit") : " " + unit.word();
  }

  private String converted(ProgesteroneBand band, DoubleUnaryOperator fromNgPerMl) {
    Unit unit = band.statedUnit();
    return unit == null
        ? ""
        : edges(band, edge -> fromNgPerMl.applyAsDouble(unit.toNgPerMl(edge)), this::level);
  }

  /** Writes a number. */
  private interface Writing {
    String of(double number);
  }

  private static String edges(ProgesteroneBand band, DoubleUnaryOperator scale, Writing writing) {
    Double low = band.low();
    Double high = band.high();
    if (low == null) {
      return high == null ? "" : "<" + writing.of(scale.applyAsDouble(high));
    }
    String from = writing.of(scale.applyAsDouble(low));
    return high == null ? ">" + from : from + "–" + writing.of(scale.applyAsDouble(high));
  }
}
