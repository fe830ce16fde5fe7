package io.github.tiderule.api.paper;

import io.github.tiderule.api.picture.Curve;
import io.github.tiderule.api.picture.CurveInput;
import io.github.tiderule.api.picture.CurveRow;
import io.github.tiderule.api.picture.CurveSize;
import io.github.tiderule.api.report.LocalWords;
import java.util.ArrayList;
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
    List<List<String>> cells = new ArrayList<>();
    for (CurveRow row : rows) {
      cells.add(
          List.of(
              row.observation(),
              LocalWords.moment(row.at()),
              row.what(),
              row.asReported(),
              row.ngPerMl(),
              row.nmolPerL(),
              row.series(),
              row.use().equals("taken") ? "" : row.use()));
    }
    html.table(
        "In time order; 1 ng/mL = 3.18 nmol/L",
        List.of(
            "id", "when", "what", "as reported", "ng/mL", "nmol/L", "laboratory, method", "use"),
        cells,
        room.most(60, 45, 34, 28, 24, 20, 16));
  }
}
