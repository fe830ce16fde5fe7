package io.github.tiderule.api.service;

import io.prometheus.metrics.core.metrics.Counter;
import io.prometheus.metrics.core.metrics.Gauge;
import io.prometheus.metrics.core.metrics.GaugeWithCallback;
import io.prometheus.metrics.core.metrics.Histogram;
import io.prometheus.metrics.expositionformats.PrometheusTextFormatWriter;
import io.prometheus.metrics.model.registry.PrometheusRegistry;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** What the service counts. It counts routes, never what they are asked about. */
final class Metrics {

  static final String CONTENT_TYPE = PrometheusTextFormatWriter.CONTENT_TYPE;

  private static final double NANOS = 1e9;
  private static final String UNKNOWN = "unknown";

  private final PrometheusRegistry registry = new PrometheusRegistry();
  private final Counter requests =
      Counter.builder()
          .name("tiderule_requests_total")
          .help("Requests answered.")
          .labelNames("method", "route", "status")
          .register(registry);
  private final Histogram seconds =
      Histogram.builder()
          .name("tiderule_request_seconds")
          .help("Time from a request to its answer, in seconds.")
          .labelNames("method", "route")
          .classicOnly()
          .classicUpperBounds(0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 10)
          .register(registry);
  private final Gauge underWay =
      Gauge.builder()
          .name("tiderule_requests_under_way")
          .help("Requests being answered.")
          .register(registry);

  Metrics() {
    GaugeWithCallback.builder()
        .name("tiderule_memory_used_bytes")
        .help("Memory of the Java heap in use.")
        .callback(
            gauge -> {
              Runtime runtime = Runtime.getRuntime();
              gauge.call((double) (runtime.totalMemory() - runtime.freeMemory()));
            })
        .register(registry);
  }

  void begun() {
    underWay.inc();
  }

  void ended(String method, String path, int status, long nanos) {
    underWay.dec();
    requests.labelValues(method, path, Integer.toString(status)).inc();
    seconds.labelValues(method, path).observe(nanos / NANOS);
  }

  void missed(String method, int status) {
    requests.labelValues(method, UNKNOWN, Integer.toString(status)).inc();
  }

  String text() {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try {
      PrometheusTextFormatWriter.create().write(out, registry.scrape());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toString(StandardCharsets.UTF_8);
  }
}
