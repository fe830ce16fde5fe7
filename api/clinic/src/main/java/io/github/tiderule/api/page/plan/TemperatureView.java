package io.github.tiderule.api.page.plan;

import io.github.tiderule.api.picture.CurveInput;
import io.github.tiderule.api.picture.CurveSize;
import io.github.tiderule.api.picture.TemperatureCurve;
import io.github.tiderule.api.report.text.Telling;
import org.jspecify.annotations.Nullable;

/**
 * Her temperature, laid out for two widths.
 *
 * @param phone an {@code svg} element for narrow windows
 * @param screen the same for others
 * @param words the last reading beside her own mean
 */
public record TemperatureView(String phone, String screen, String words) {

  /** Of a season; absent where there are too few readings. */
  static @Nullable TemperatureView of(Standing.Answered answered, Telling telling) {
    CurveInput input = CurveInput.of(answered.cycle(), answered.reasoning(), telling);
    TemperatureCurve screen = TemperatureCurve.of(input, CurveSize.SCREEN);
    return screen.isWorthDrawing()
        ? new TemperatureView(
            TemperatureCurve.of(input, CurveSize.PHONE).svg("heatphone"),
            screen.svg("heatscreen"),
            screen.description())
        : null;
  }
}
