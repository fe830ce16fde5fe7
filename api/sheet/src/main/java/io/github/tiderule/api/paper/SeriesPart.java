package io.github.tiderule.api.paper;

import io.github.tiderule.api.picture.Curve;
import io.github.tiderule.api.picture.CurveInput;
import io.github.tiderule.api.picture.CurveRow;
import io.github.tiderule.api.picture.CurveSize;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.api.words.Words;
import io.github.tiderule.rules.fact.assay.Unit;
import java.util.List;

/** Everything that was measured, seen and done, as it was read. */
final class SeriesPart implements Part {

  private static final Texts TEXTS = Texts.ofReports();

  private final List<CurveRow> rows;

  SeriesPart(CurveInput input) {
    this.rows = Curve.of(input, CurveSize.PAPER).rows();
  }

  @Override
  public void write(Html html, Room room) {
    html.heading(TEXTS.say("paper.series"));
    if (rows.isEmpty()) {
      html.paragraph("", TEXTS.say("paper.series.none"));
      return;
    }
    List<CurveRow> levels = rows.stream().filter(CurveRow::level).toList();
    List<CurveRow> others = rows.stream().filter(row -> !levels.contains(row)).toList();
    if (!levels.isEmpty()) {
      html.table(
          TEXTS.say("paper.series.levels"),
          List.of(
              TEXTS.say("paper.series.id"),
              TEXTS.say("paper.series.drawn"),
              TEXTS.say("paper.series.reported"),
              Unit.NG_PER_ML.word(),
              Unit.NMOL_PER_L.word(),
              TEXTS.say("paper.series.series"),
              TEXTS.say("paper.series.use")),
          levels.stream().map(SeriesPart::level).toList(),
          room.most(60, 45, 34, 28, 22, 18, 14));
    }
    if (!others.isEmpty()) {
      html.table(
          TEXTS.say("paper.series.others"),
          List.of(
              TEXTS.say("paper.series.id"),
              TEXTS.say("paper.series.when"),
              TEXTS.say("paper.series.what"),
              TEXTS.say("paper.series.showed"),
              TEXTS.say("paper.series.use")),
          others.stream().map(SeriesPart::other).toList(),
          room.most(60, 40, 28, 20, 14, 10, 7));
    }
  }

  private static List<String> level(CurveRow row) {
    return List.of(
        row.observation(),
        moment(row),
        row.asReported(),
        row.ngPerMl(),
        row.nmolPerL(),
        row.series(),
        use(row));
  }

  private static List<String> other(CurveRow row) {
    return List.of(row.observation(), moment(row), row.what(), row.asReported(), use(row));
  }

  private static String moment(CurveRow row) {
    return Words.REPORTS.shortMoment(row.at());
  }

  private static String use(CurveRow row) {
    return row.use().equals("taken") ? "" : row.use();
  }
}
