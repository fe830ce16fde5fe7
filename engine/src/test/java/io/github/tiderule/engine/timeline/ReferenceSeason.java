package io.github.tiderule.engine.timeline;

import io.github.tiderule.rules.fact.Certainty;
import io.github.tiderule.rules.fact.EarlierCycle;
import io.github.tiderule.rules.fact.FirstBlood;
import io.github.tiderule.rules.fact.assay.Method;
import io.github.tiderule.rules.fact.assay.Series;
import io.github.tiderule.rules.fact.observation.Folds;
import io.github.tiderule.rules.fact.observation.Neutrophils;
import io.github.tiderule.rules.fact.observation.SignKind;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * A season with every part of its posterior as the same model written a second time has it: see
 * {@code cases/reference/parts.py}.
 */
final class ReferenceSeason {

  private final String name;
  private final Map<String, double[]> parts = new LinkedHashMap<>();
  private final List<EarlierCycle> earlier = new ArrayList<>();
  private final List<Evidence.Value> values = new ArrayList<>();
  private final List<Evidence.Interval> intervals = new ArrayList<>();
  private final List<Evidence.Lh> lhTests = new ArrayList<>();
  private final List<Evidence.SmearSeen> smears = new ArrayList<>();
  private final List<Evidence.FoldsSeen> folds = new ArrayList<>();
  private final List<Evidence.SignSeen> signs = new ArrayList<>();
  private final List<Evidence.Scan> scans = new ArrayList<>();
  private FirstBlood firstBlood = new FirstBlood(null, Certainty.UNKNOWN);
  private @Nullable Double firstBloodDay;
  private double now;
  private int ids;

  private ReferenceSeason(String name) {
    this.name = name;
  }

  /** All of them. */
  static List<ReferenceSeason> all() {
    List<ReferenceSeason> all = new ArrayList<>();
    try (BufferedReader lines =
        new BufferedReader(
            new InputStreamReader(
                Objects.requireNonNull(
                    ReferenceSeason.class.getResourceAsStream("reference.txt"), "reference.txt"),
                StandardCharsets.UTF_8))) {
      for (String line = lines.readLine(); line != null; line = lines.readLine()) {
        String[] fields = line.split(" ", -1);
        if (fields[0].equals("case")) {
          all.add(new ReferenceSeason(fields[1]));
        } else {
          all.get(all.size() - 1).read(fields);
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return all;
  }

  private void read(String[] fields) {
    String id = "o" + ids++;
    switch (fields[0]) {
      case "now" -> now = number(fields[1]);
      case "blood" -> {
        firstBlood = new FirstBlood(LocalDate.parse(fields[1]), word(Certainty.class, fields[2]));
        firstBloodDay = number(fields[3]);
      }
      case "earlier" -> {
        LocalDate blood = LocalDate.of(2026, 1, 10);
        earlier.add(new EarlierCycle(blood, blood.plusDays(Integer.parseInt(fields[1]))));
      }
      case "result" -> result(id, fields);
      case "lh" -> lhTests.add(new Evidence.Lh(id, number(fields[1]), flag(fields[2])));
      case "folds" ->
          folds.add(new Evidence.FoldsSeen(id, number(fields[1]), word(Folds.class, fields[2])));
      case "sign" ->
          signs.add(
              new Evidence.SignSeen(
                  id, number(fields[1]), word(SignKind.class, fields[2]), flag(fields[3])));
      case "smear" ->
          smears.add(
              new Evidence.SmearSeen(
                  id,
                  number(fields[1]),
                  fields[2].equals("-") ? null : Double.valueOf(fields[2]),
                  fields[3].equals("-") ? null : word(Neutrophils.class, fields[3])));
      case "scan" -> scans.add(new Evidence.Scan(id, number(fields[1]), flag(fields[2])));
      default ->
          parts.put(
              fields[0],
              Arrays.stream(fields).skip(1).mapToDouble(ReferenceSeason::number).toArray());
    }
  }

  private void result(String id, String[] fields) {
    double day = number(fields[1]);
    double low = number(fields[2]);
    double high = number(fields[3]);
    Series series = Series.of(fields[4].substring(1), method(fields[5]));
    boolean readsLow = flag(fields[6]);
    boolean noisy = flag(fields[7]);
    if (low == high) {
      values.add(new Evidence.Value(id, day, low, series, readsLow, noisy));
    } else {
      intervals.add(
          new Evidence.Interval(id, day, low, high, series, readsLow, noisy, flag(fields[8])));
    }
  }

  private static Method method(String word) {
    return Arrays.stream(Method.values())
        .filter(method -> method.word().equals(word))
        .findFirst()
        .orElseThrow();
  }

  private static <E extends Enum<E>> E word(Class<E> type, String word) {
    return Enum.valueOf(type, word.toUpperCase(Locale.ROOT).replace('-', '_'));
  }

  private static boolean flag(String field) {
    return field.equals("1");
  }

  private static double number(String field) {
    return field.equals("inf")
        ? Double.POSITIVE_INFINITY
        : field.equals("-inf") ? Double.NEGATIVE_INFINITY : Double.parseDouble(field);
  }

  Evidence evidence() {
    return new Evidence(
        firstBlood,
        firstBloodDay,
        now,
        earlier,
        values,
        intervals,
        lhTests,
        smears,
        folds,
        signs,
        scans);
  }

  /** Whether the reference has a part of that name. */
  boolean has(String part) {
    return parts.containsKey(part);
  }

  /** Numbers of the reference. */
  double[] part(String part) {
    return Objects.requireNonNull(parts.get(part), () -> name + " has no " + part);
  }

  @Override
  public String toString() {
    return name;
  }
}
