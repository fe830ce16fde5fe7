package io.github.tiderule.api.page.plan;

import io.github.tiderule.api.report.AdviceReport;
import io.github.tiderule.api.report.ChangesReport;
import io.github.tiderule.api.report.text.KeyNames;
import io.github.tiderule.api.report.text.ObservationWords;
import io.github.tiderule.api.report.text.Section;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.api.words.Words;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.Plan;
import io.github.tiderule.engine.change.AdviceChange;
import io.github.tiderule.engine.change.Told;
import java.math.BigDecimal;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
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

  private static final List<String> OF_TIMING =
      List.of(
          Section.HOW_SURE,
          Section.NEXT_TEST,
          Section.WOULD_CHANGE,
          Section.WEIGHTS,
          Section.DISAGREEMENTS,
          Section.WHELPING,
          Section.CAESAREAN);

  private static final List<String> OF_PREGNANCY =
      List.of(
          Section.WHELPING_ONCE_BRED, Section.PREGNANCY, Section.HAPPENED, Section.LOOKING_BACK);

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
    ObservationWords names = new ObservationWords(told.cycle());
    KeyNames keys = new KeyNames(told.cycle());
    List<String> stops = cautions(advice, "stop", keys, words);
    List<Asked> questions =
        advice.questions().stream()
            .map(
                query ->
                    new Asked(
                        query.about(),
                        words.localised(keys.plain(names.of(query.about()))),
                        words.localised(keys.plain(query.text().toString())),
                        query.readings().stream()
                            .map(
                                one ->
                                    new Reading(
                                        one.unit(),
                                        written(one.value()),
                                        words.localised(one.meaning().toString())))
                            .toList()))
            .toList();
    return new PlanView(
        words.localised(keys.plain(advice.action().headline().toString())),
        words.moment(advice.asOf()),
        advice.action().then().stream()
            .map(next -> words.localised(keys.plain(next.toString())))
            .toList(),
        orderBy == null || !advice.action().then().isEmpty() ? null : words.shortMoment(orderBy),
        questions,
        stops,
        cautions(advice, "vet", keys, words),
        cautions(advice, "care", keys, words),
        stops.isEmpty() ? DayCell.all(advice, keys, texts, words) : List.of(),
        stops.isEmpty() ? CurveView.of(answered) : null,
        localised(AdviceReport.sections(told.cycle(), advice), keys, words),
        advice.pregnancy() != null,
        before == null ? null : words.moment(before.advice().asOf()),
        before == null ? List.of() : localised(changes(before, told), keys, words));
  }

  private static List<Section> localised(List<Section> sections, KeyNames keys, Words words) {
    return sections.stream()
        .filter(section -> !section.heading().isEmpty())
        .map(
            section ->
                new Section(
                    section.heading(),
                    section.lines().stream()
                        .map(
                            line ->
                                new Section.Line(
                                    line.indent(),
                                    line.mark(),
                                    words.localised(keys.plain(line.words()))))
                        .toList()))
        .toList();
  }

  private static List<String> cautions(Advice advice, String level, KeyNames keys, Words words) {
    return advice.cautions().stream()
        .filter(caution -> caution.level().equals(level))
        .map(caution -> caution.text().toString())
        .map(keys::plain)
        .map(words::localised)
        .toList();
  }

  /** What changed, without the rules behind it, which are for a vet. */
  private static List<Section> changes(Told before, Told after) {
    AdviceChange change = AdviceChange.between(before, after);
    if (change.nothingMoved() && change.observations().isEmpty()) {
      return List.of();
    }
    List<String> forVets = List.of(Section.RULES_NEW, Section.RULES_GONE);
    return ChangesReport.sections(before, after, change).stream()
        .filter(section -> !forVets.contains(section.heading()))
        .toList();
  }

  /** A part of the report; empty where there is none. */
  public List<Section.Line> lines(String heading) {
    List<Section.Line> lines = new ArrayList<>();
    for (Section section : sections) {
      if (section.heading().equals(heading)) {
        lines.addAll(section.lines());
      }
    }
    return lines;
  }

  /** Whether there is a sheet for the day of insemination, and the plan is not stopped. */
  public boolean hasDaySheet() {
    return stops.isEmpty() && !lines(Section.SHEET).isEmpty();
  }

  /** The signs that call a vet, as far as she may show them now. */
  public List<Section> redFlags() {
    return sections.stream()
        .filter(section -> Section.RED_FLAGS.containsValue(section.heading()))
        .toList();
  }

  /** The parts that stand below the days, in their order; of a pregnancy alone after a stop. */
  public List<Section> below() {
    List<String> wanted = new ArrayList<>(OF_PREGNANCY);
    if (stops.isEmpty()) {
      wanted.addAll(OF_TIMING);
    }
    return sections.stream().filter(section -> wanted.contains(section.heading())).toList();
  }
}
