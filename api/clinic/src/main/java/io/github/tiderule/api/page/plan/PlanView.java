package io.github.tiderule.api.page.plan;

import io.github.tiderule.api.paper.DaySheet;
import io.github.tiderule.api.report.AdviceReport;
import io.github.tiderule.api.report.ChangesReport;
import io.github.tiderule.api.report.Due;
import io.github.tiderule.api.report.Front;
import io.github.tiderule.api.report.text.Section;
import io.github.tiderule.api.report.text.SectionKind;
import io.github.tiderule.api.report.text.Telling;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.api.words.Words;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.Plan;
import io.github.tiderule.engine.advice.course.Ovulation;
import io.github.tiderule.engine.advice.reasoning.Query;
import io.github.tiderule.engine.change.AdviceChange;
import io.github.tiderule.engine.change.Told;
import io.github.tiderule.rules.conclusion.care.CautionLevel;
import io.github.tiderule.rules.fact.semen.Availability;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * An answer as a page shows it: what is read first, in the order of {@link Front}, the picture, and
 * all else folded away.
 *
 * @param front what is read first
 * @param asOf the moment it is for
 * @param stops cautions that end all talk of timing
 * @param vets cautions for which to see a vet
 * @param days none where timing is not talked of
 * @param curve absent where timing is not talked of
 * @param temperature absent before she is bred, and where there is no reading to compare
 * @param pregnant whether she may be carrying, or has whelped lately
 * @param isDayOfInsemination whether the sheet for the day is wanted today
 * @param listEnds that the times given for breeding end before she may have ovulated, as a list
 *     does that was half typed; absent otherwise
 * @param daySheet whether there is a sheet for the day of insemination
 * @param changedFrom the moment of the answer before; absent where there was none
 * @param changes what changed since then
 */
public record PlanView(
    Front front,
    String asOf,
    List<Asked> questions,
    List<String> stops,
    List<String> vets,
    List<DayCell> days,
    @Nullable CurveView curve,
    @Nullable TemperatureView temperature,
    List<Section> sections,
    boolean pregnant,
    boolean isDayOfInsemination,
    @Nullable String listEnds,
    boolean daySheet,
    @Nullable String changedFrom,
    List<Section> changes) {

  /** What stands in one fold, by the name of its place and of its title. */
  private static final Map<String, List<SectionKind>> FOLDS = byPlace();

  private static final Set<SectionKind> OF_PREGNANCY =
      EnumSet.of(SectionKind.WHELPING, SectionKind.LOOKING_BACK);

  /** Rules behind a change, which are for a vet. */
  private static final Set<SectionKind> OF_RULES =
      EnumSet.of(SectionKind.RULES_NEW, SectionKind.RULES_GONE);

  private static final int MOST_DUE = 6;
  private static final String CAUTIONS = "cautions";
  private static final String BEFORE_SEASON = "before-season";

  /** Folds that stay after a stop. */
  private static final Set<String> UNSTOPPED =
      Set.of(CAUTIONS, BEFORE_SEASON, "pregnancy", "happened");

  private static Map<String, List<SectionKind>> byPlace() {
    Map<String, List<SectionKind>> folds = new LinkedHashMap<>();
    folds.put("pregnancy", List.of(SectionKind.PREGNANCY));
    folds.put("happened", List.of(SectionKind.HAPPENED));
    folds.put(
        "plan",
        List.of(SectionKind.PLAN, SectionKind.NEXT_TEST, SectionKind.HOW_SURE, SectionKind.TAKEN));
    folds.put("change", List.of(SectionKind.WOULD_CHANGE, SectionKind.WEIGHTS));
    folds.put("disagree", List.of(SectionKind.DISAGREEMENTS));
    folds.put("whelping-if", List.of(SectionKind.WHELPING_IF));
    folds.put("caesarean", List.of(SectionKind.CAESAREAN));
    folds.put(CAUTIONS, List.of(SectionKind.CAUTIONS));
    folds.put(BEFORE_SEASON, List.of(SectionKind.BEFORE_SEASON));
    return folds;
  }

  /**
   * What is folded away until it is asked for.
   *
   * @param id its place; by which its title is named where it holds several parts
   * @param count how many lines there are, where that is worth saying; else 0
   */
  public record Fold(String id, List<Section> sections, int count) {}

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
    Telling telling = Telling.toPerson(told.cycle(), words);
    List<String> stops = cautions(advice, CautionLevel.STOP, telling);
    return new PlanView(
        Front.of(told.cycle(), advice, telling),
        words.moment(advice.asOf()),
        advice.questions().stream().map(query -> asked(query, telling)).toList(),
        stops,
        cautions(advice, CautionLevel.VET, telling),
        stops.isEmpty() ? DayCell.all(advice, telling, texts) : List.of(),
        stops.isEmpty() ? CurveView.of(answered, telling) : null,
        advice.course().pregnancy() == null ? null : TemperatureView.of(answered, telling),
        AdviceReport.sections(told.cycle(), advice, telling).stream()
            .filter(section -> !section.heading().isEmpty())
            .toList(),
        advice.course().pregnancy() != null,
        isToday(advice),
        listEnds(told.cycle(), advice, texts, words),
        DaySheet.isIn(advice),
        before == null ? null : words.moment(before.advice().asOf()),
        before == null ? List.of() : changes(before, told, words));
  }

  private static @Nullable String listEnds(
      CycleRecord cycle, Advice advice, Texts texts, Words words) {
    Ovulation ovulation = advice.timing().ovulation();
    if (ovulation == null || advice.breeding().bred() != null) {
      return null;
    }
    return cycle.semenPlan().available().stream()
        .map(Availability::to)
        .max(Comparator.naturalOrder())
        .filter(end -> end.isBefore(ovulation.p95().toInstant()))
        .map(
            end ->
                texts.say(
                    "list.ends",
                    words.shortDay(end.atZone(cycle.zone()).toLocalDate()),
                    words.shortDay(ovulation.p95().toLocalDate())))
        .orElse(null);
  }

  private static boolean isToday(Advice advice) {
    Plan plan = advice.breeding().plan();
    return plan != null
        && plan.at().stream().anyMatch(at -> at.toLocalDate().equals(advice.asOf().toLocalDate()));
  }

  private static Asked asked(Query query, Telling telling) {
    return new Asked(
        query.about(),
        telling.observation(query.about()),
        telling.say(query.text()),
        query.readings().stream()
            .map(
                one ->
                    new Reading(
                        one.unit().word(), written(one.value()), telling.say(one.meaning())))
            .toList());
  }

  private static List<String> cautions(Advice advice, CautionLevel level, Telling telling) {
    return advice.cautions().stream()
        .filter(caution -> caution.level() == level)
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
    return stops.isEmpty() && daySheet;
  }

  /** Whether there is something to say of the semen in hand, and the plan is not stopped. */
  public boolean tellsSemen() {
    return stops.isEmpty() && !lines(SectionKind.SHEET).isEmpty();
  }

  /** What is due soonest; the rest stands with the whelping. */
  public List<Due> dueSoon() {
    return front.due().stream().limit(MOST_DUE).toList();
  }

  /** The signs that call a vet, as far as she may show them now. */
  public List<Section> redFlags() {
    return sections.stream().filter(section -> section.kind().isRedFlags()).toList();
  }

  /** What stands open once she is bred; what is due until then is among what is due. */
  public List<Section> ofPregnancy() {
    return sections.stream().filter(one -> OF_PREGNANCY.contains(one.kind())).toList();
  }

  /** Everything else, folded; after a stop what does not talk of timing. */
  public List<Fold> folds() {
    List<Fold> folds = new ArrayList<>();
    FOLDS.forEach(
        (id, kinds) -> {
          List<Section> inside =
              kinds.stream()
                  .flatMap(kind -> sections.stream().filter(section -> section.kind() == kind))
                  .filter(section -> !section.lines().isEmpty())
                  .toList();
          boolean told = stops.isEmpty() || UNSTOPPED.contains(id);
          if (!inside.isEmpty() && told) {
            folds.add(new Fold(id, inside, id.equals(CAUTIONS) ? inside.get(0).lines().size() : 0));
          }
        });
    return folds;
  }
}
