package io.github.tiderule.engine.timeline;

/** The lag from LH peak to ovulation: normal, cut off at its bounds. */
final class Lag {

  private final double mean;
  private final double sd;
  private final double min;
  private final double max;

  Lag(Model model) {
    mean = model.value("lag.mean");
    sd = model.value("lag.sd");
    min = model.value("lag.min");
    max = model.value("lag.max");
  }

  /** Weights of lags of 0, 1, 2 … steps; they sum to 1. */
  double[] kernel(double step) {
    double[] kernel = new double[(int) Math.ceil(max / step) + 2];
    double sum = 0;
    for (int i = 0; i < kernel.length; i++) {
      double lag = i * step;
      // the cut-offs at either end are spread over one step, so that the grid does not matter
      double inside = clamp((lag - min) / step + 0.5) * clamp((max - lag) / step + 0.5);
      kernel[i] = inside * Normal.density((lag - mean) / sd);
      sum += kernel[i];
    }
    for (int i = 0; i < kernel.length; i++) {
      kernel[i] /= sum;
    }
    return kernel;
  }

  private static double clamp(double x) {
    return Math.min(Math.max(x, 0), 1);
  }
}
