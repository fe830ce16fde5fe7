package io.github.tiderule.api.command;

import io.github.tiderule.api.picture.Curve;
import io.github.tiderule.api.picture.CurveInput;
import io.github.tiderule.api.picture.CurveSize;
import io.github.tiderule.api.picture.svg.Raster;
import io.github.tiderule.api.report.text.Telling;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.Reasoning;
import java.nio.charset.StandardCharsets;

/** The curve as a file. */
final class Pictures {

  private static final String NAME = "curve";

  /** Twice the breadth of the picture on a screen, so that it is sharp on paper. */
  private static final int PIXELS = 1520;

  private Pictures() {}

  static byte[] svg(CycleRecord cycle, Reasoning reasoning) {
    String head = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n";
    return (head + curve(cycle, reasoning)).getBytes(StandardCharsets.UTF_8);
  }

  static byte[] png(CycleRecord cycle, Reasoning reasoning) {
    return Raster.png(curve(cycle, reasoning), PIXELS);
  }

  private static String curve(CycleRecord cycle, Reasoning reasoning) {
    return Curve.of(CurveInput.of(cycle, reasoning, Telling.onTerminal(cycle)), CurveSize.SCREEN)
        .svg(NAME);
  }
}
