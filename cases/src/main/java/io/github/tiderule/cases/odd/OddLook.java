package io.github.tiderule.cases.odd;

import io.github.tiderule.cases.cohort.Calendar;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.Tiderule;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.Plan;
import io.github.tiderule.engine.advice.course.Ovulation;
import io.github.tiderule.rules.fact.observation.Observation;
import io.github.tiderule.rules.fact.observation.Progesterone;
import io.github.tiderule.rules.fact.observation.Smear;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * Prints odd seasons evening by evening, with what was told and what is wrong with it: {@code
 * OddLook KIND [FROM [TO [SEED]]]} prints those with a fault among the numbers FROM to TO, {@code
 * all} after that all of them.
 */
public final class OddLook {

  private OddLook() {}

  /**
   * Prints to standard output.
   *
   * @param args the kind as it is named in {@link Kind}, by default ORDINARY; first and last
   *     number, by default 0 and 49; seed, by default 1; {@code all}
   */
  public static void main(String[] args) {
    Kind kind = Kind.valueOf(args.length > 0 ? args[0] : "ORDINARY");
    int from = args.length > 1 ? Integer.parseInt(args[1]) : 0;
    int to = args.length > 2 ? Integer.parseInt(args[2]) : 49;
    long seed = args.length > 3 ? Long.parseLong(args[3]) : 1;
    boolean all = args.length > 4;
    Tiderule engine = Tiderule.create();
    Eggs eggs = new Eggs(seed);
    IntStream.rangeClosed(from, to)
        .parallel()
        .mapToObj(number -> Keeping.of(seed, kind, number))
        .map(season -> text(engine, eggs, season, all))
        .forEachOrdered(System.out::print);
  }

  private static String text(Tiderule engine, Eggs eggs, OddSeason season, boolean all) {
    List<Verdict> verdicts = Verdict.of(engine, eggs, season);
    boolean alarm = season.truth().kind() == Kind.ORDINARY;
    if (!all && verdicts.stream().noneMatch(v -> v.wrong() || (alarm && v.doubt()))) {
      return "";
    }
    Truth truth = season.truth();
    StringBuilder text =
        new StringBuilder(
            String.format(
                Locale.ROOT,
                "%n%s %d, %s: ovulation %.1f, noticed %d, blood %.0f%n",
                truth.kind(),
                truth.number(),
                season.row().words(),
                truth.ovulation(),
                truth.noticedAfter(),
                truth.trueBlood()));
    for (int i = 0; i < verdicts.size(); i++) {
      Asked asked = season.asked().get(i);
      text.append(String.format(Locale.ROOT, "  day %.1f ", asked.day()));
      CycleRecord told = asked.told();
      text.append(told == null ? "refused" : evening(season, told, engine.advise(told)));
      text.append(faults(verdicts.get(i))).append('\n');
    }
    return text.toString();
  }

  private static String evening(OddSeason season, CycleRecord told, Advice advice) {
    StringBuilder text = new StringBuilder();
    text.append(
        told.observations().stream()
            .filter(one -> Calendar.day(told.asOf()) - Calendar.day(one.at()) < 1)
            .map(OddLook::words)
            .collect(Collectors.joining(", ")));
    Ovulation ovulation = advice.timing().ovulation();
    if (ovulation != null) {
      text.append(
          String.format(
              Locale.ROOT,
              " | ovulation %.1f to %.1f, none %.2f%s",
              day(season, ovulation.p05()),
              day(season, ovulation.p95()),
              ovulation.noOvulationProbability(),
              ovulation.confirmed() ? ", proven" : ""));
    }
    Plan plan = advice.breeding().plan();
    if (plan != null) {
      text.append(
          String.format(
              Locale.ROOT,
              " | plan %.1f (%.2f)",
              day(season, plan.at().get(0)),
              plan.eggShare().mean()));
    }
    text.append(" | ").append(advice.action().headline());
    advice.questions().forEach(question -> text.append(" ? ").append(question.text()));
    return text.toString();
  }

  private static double day(OddSeason season, OffsetDateTime at) {
    return Calendar.day(at.toInstant()) - season.begins();
  }

  private static String words(Observation observation) {
    if (observation instanceof Progesterone p) {
      return (p.comparator() == null ? "" : p.comparator().word())
          + p.value()
          + (p.statedUnit() == null ? "" : " " + p.statedUnit().word());
    }
    return observation instanceof Smear smear
        ? smear.cornifiedPercent() + " % " + smear.neutrophils()
        : observation.getClass().getSimpleName();
  }

  private static String faults(Verdict verdict) {
    return (verdict.over() ? " OVER" : verdict.overAtOnce() ? " over-at-once" : "")
        + (verdict.confident()
            ? " INTERVAL"
            : verdict.firmOutside() ? " firm-outside" : verdict.outside() ? " outside" : "")
        + (verdict.falseProof() ? " PROOF" : "")
        + (verdict.harmfulSlip() ? " SLIP" : verdict.slipUnnoticed() ? " slip" : "")
        + (verdict.doseInVain() ? " VAIN" : verdict.inVainAtFirst() ? " vain" : "")
        + (verdict.doubt() ? " doubt" : "");
  }
}
