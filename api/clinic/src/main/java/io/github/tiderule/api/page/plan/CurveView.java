package io.github.tiderule.api.page.plan;

import io.github.tiderule.api.picture.Curve;
import io.github.tiderule.api.picture.CurveInput;
import io.github.tiderule.api.picture.CurveRow;
import io.github.tiderule.api.picture.CurveSize;
import io.github.tiderule.api.report.text.Telling;
import java.util.List;

/**
 * The curve of a season, laid out for two widths, with the same numbers as a table.
 *
 * @param phone an {@code svg} element for narrow windows
 * @param screen the same for others
 */
public record CurveView(String phone, String screen, List<CurveRow> rows) {

  /** The same where nothing is said of its days. */
  public static CurveView still(Standing.Answered answered, Telling telling) {
    CurveInput input = CurveInput.of(answered.cycle(), answered.reasoning(), telling);
    return new CurveView(
        Curve.of(input, CurveSize.PHONE).svg("phone"),
        Curve.of(input, CurveSize.SCREEN).svg("screen"),
        List.of());
  }

  /** The curve of an answer, with a link over each day to what is said of it. */
  public static CurveView of(Standing.Answered answered, Telling telling) {
    CurveInput input = CurveInput.of(answered.cycle(), answered.reasoning(), telling);
    Curve screen = Curve.of(input, CurveSize.SCREEN);
    return new CurveView(
        Curve.of(input, CurveSize.PHONE).linked("phone"), screen.linked("screen"), screen.rows());
  }
}
