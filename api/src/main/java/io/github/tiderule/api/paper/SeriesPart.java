package io.github.tiderule.api.paper;

import io.github.tiderule.api.picture.Curve;
import io.github.tiderule.api.picture.CurveInput;
import io.github.tiderule.api.picture.CurveRow;
import io.github.tiderule.api.picture.CurveSize;
import io.github.tiderule.api.report.LocalWords;
import java.util.List;

/** Everything that was measured, seen and done, as it was read. */
final class SeriesPart implements Part {

  private final List<CurveRow> rows;

  SeriesPart(CurveInput input) {
    this.rows = Curve.of(input, CurveSize.PAPER).rows();
  }

  @Override
  public void write(Html html, Room room) {
    html.heading("Observations, as read");
    if (rows.isEmpty()) {
      html.paragraph("", "None yet.");
      return;
    }
    List<CurveRow> levels =
        rows.stream().filter(row -> row.what().startsWith("progesterone")).toList();
    List<CurveRow> others = rows.stream().filter(row -> !levels.contains(row)).toList();
    if (!levels.isEmpty()) {
      html.table(
          "Progesterone; 1 ng/mL = 3.18 nmol/L",
          List.of("id", "drawn", "as reported", "ng/mL", "nmol/L", "laboratory, method", "use"),
          levels.stream().map(SeriesPart::level).toList(),
          room.most(60, 45, 34, 28, 22, 18, 14));
    }
    if (!others.isEmpty()) {
      html.table(
          "Smears, LH tests, folds, signs, ultrasound and breedings",
          List.of("id", "when", "what", "showed", "use"),
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
    return LocalWords.shortDay(row.at().toLocalDate()) + ", " + LocalWords.clock(row.at());
  }

  private static String use(CurveRow row) {
    return row.use().equals("taken") ? "" : row.use();
  }
}
