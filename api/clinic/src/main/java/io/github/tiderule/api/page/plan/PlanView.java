package io.github.tiderule.api.page.plan;

import io.github.tiderule.api.report.AdviceReport;
import io.github.tiderule.api.report.ChangesReport;
import io.github.tiderule.api.report.text.Section;
import io.github.tiderule.api.report.text.SectionKind;
import io.github.tiderule.api.report.text.Telling;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.api.words.Words;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.Plan;
import io.github.tiderule.engine.advice.reasoning.Query;
import io.github.tiderule.engine.change.AdviceChange;
import io.github.tiderule.engine.change.Told;
import java.math.BigDecimal;
import java.time.OffsetDateTime;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * An answer as a page shows it.
 *
 * @param then what follows the headline, in sentences; may be empty
 * @param orderBy the last time to order; absent where nothing is ordered, or something comes first
 * @param stops cautions that end all talk of timing
 * @param vets cautions for which to see a vet
 * @param cares other cautions
 * @param curve absent where timing is not talked of
 * @param pregnant whether she may be carrying, or has whelped lately
 * @param changedFrom the moment of the answer before; absent where there was none
 * @param changes what changed since then
 */
public record PlanView(
    String headline,
    String asOf,
    List<String> then,
    @Nullable String orderBy,
    List<Asked> questions,
    List<String> stops,
    List<String> vets,
    List<String> cares,
    List<DayCell> days,
    @Nullable CurveView curve,
    List<Section> sections,
    boolean pregnant,
    @Nullable String changedFrom,
    List<Section> changes) {

  private static final Set<SectionKind> OF_TIMING =
      EnumSet.of(
          SectionKind.HOW_SURE,
          SectionKind.NEXT_TEST,
          SectionKind.WOULD_CHANGE,
          SectionKind.WEIGHTS,
          SectionKind.DISAGREEMENTS,
          SectionKind.WHELPING_IF,
          SectionKind.CAESAREAN);

  private static final Set<SectionKind> OF_PREGNANCY =
      EnumSet.of(
          SectionKind.WHELPING,
          SectionKind.PREGNANCY,
          SectionKind.HAPPENED,
          SectionKind.LOOKING_BACK);

  /** Rules behind a change, which are for a vet. */
  private static final Set<SectionKind> OF_RULES =
      EnumSet.of(SectionKind.RULES_NEW, SectionKind.RULES_GONE);

  /**
   * A question.
   *
   * @param about id of the observation
   * @param name what people call the observation
   */
  public record Asked(String about, String name, String text, List<Reading> readings) {}

  /**
   * What the value asked about would mean in one unit.
   *
   * @param value the number that was meant, where it is another than was entered
   */
  public record Reading(String unit, @Nullable String value, String meaning) {}

  private static @Nullable String written(@Nullable Double value) {
    return value == null ? null : BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
  }

  /** An answer in somebody's words. */
  public static PlanView of(
      Standing.Answered answered, @Nullable Told before, Texts texts, Words words) {
    Told told = answered.told();
    Advice advice = told.advice();
    Plan plan = advice.plan();
    OffsetDateTime orderBy = plan == null ? null : plan.orderBy();
    Telling telling = Telling.toPerson(told.cycle(), words);
    List<String> stops = cautions(advice, "stop", telling);
    return new PlanView(
        telling.say(advice.action().headline()),
        words.moment(advice.asOf()),
        telling.say(advice.action().then()),
        orderBy == null || !advice.action().then().isEmpty() ? null : words.shortMoment(orderBy),
        advice.questions().stream().map(query -> asked(query, telling)).toList(),
        stops,
        cautions(advice, "vet", telling),
        cautions(advice, "care", telling),
        stops.isEmpty() ? DayCell.all(advice, telling, texts) : List.of(),
        stops.isEmpty() ? CurveView.of(answered, telling) : null,
        AdviceReport.sections(told.cycle(), advice, telling).stream()
            .filter(section -> !section.heading().isEmpty())
            .toList(),
        advice.pregnancy() != null,
        before == null ? null : words.moment(before.advice().asOf()),
        before == null ? List.of() : changes(before, told, words));
  }

  private static Asked asked(Query query, Telling telling) {
    return new Asked(
        query.about(),
        telling.observation(query.about()),
        telling.say(query.text()),
        query.readings().stream()
            .map(one -> new Reading(one.unit(), written(one.value()), telling.say(one.meaning())))
            .toList());
  }

  private static List<String> cautions(Advice advice, String level, Telling telling) {
    return advice.cautions().stream()
        .filter(caution -> caution.level().equals(level))
        .map(caution -> telling.say(caution.text()))
        .toList();
  }

  /** What changed, without the rules behind it, which are for a vet. */
  private static List<Section> changes(Told before, Told after, Words words) {
    AdviceChange change = AdviceChange.between(before, after);
    if (change.nothingMoved() && change.observations().isEmpty()) {
      return List.of();
    }
    return ChangesReport.sections(before, after, change, cycle -> Telling.toPerson(cycle, words))
        .stream()
        .filter(section -> section.kind() != SectionKind.HEAD)
        .filter(section -> !OF_RULES.contains(section.kind()))
        .toList();
  }

  /** A part of the report; empty where there is none. */
  public List<Section.Line> lines(SectionKind kind) {
    return Section.of(sections, kind).lines();
  }

  /** Whether there is a sheet for the day of insemination, and the plan is not stopped. */
  public boolean hasDaySheet() {
    return stops.isEmpty() && !lines(SectionKind.SHEET).isEmpty();
  }

  /** The signs that call a vet, as far as she may show them now. */
  public List<Section> redFlags() {
    return sections.stream().filter(section -> section.kind().isRedFlags()).toList();
  }

  /** The parts that stand below the days, in their order; of a pregnancy alone after a stop. */
  public List<Section> below() {
    return sections.stream()
        .filter(
            section ->
                OF_PREGNANCY.contains(section.kind())
                    || (stops.isEmpty() && OF_TIMING.contains(section.kind())))
        .toList();
  }
}
