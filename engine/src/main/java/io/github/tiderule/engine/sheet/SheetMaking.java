package io.github.tiderule.engine.sheet;

import io.github.tiderule.engine.advice.Amount;
import io.github.tiderule.engine.advice.AmountUnit;
import io.github.tiderule.engine.advice.BreedingDay;
import io.github.tiderule.engine.advice.InseminationSheet;
import io.github.tiderule.engine.advice.InseminationSheet.Line;
import io.github.tiderule.engine.advice.Warning;
import io.github.tiderule.engine.explain.Warnings;
import io.github.tiderule.engine.insemination.Dilution;
import io.github.tiderule.engine.insemination.DoseCount;
import io.github.tiderule.engine.insemination.SemenInHand;
import io.github.tiderule.engine.insemination.Span;
import io.github.tiderule.engine.insemination.TemperatureMatch;
import io.github.tiderule.engine.plan.Breeding;
import io.github.tiderule.engine.plan.Planned;
import io.github.tiderule.engine.season.Care;
import io.github.tiderule.engine.season.Clock;
import io.github.tiderule.engine.season.Season;
import io.github.tiderule.engine.season.Tools;
import io.github.tiderule.rules.StageResult.Ruled;
import io.github.tiderule.rules.conclusion.About;
import io.github.tiderule.rules.conclusion.care.Caution;
import io.github.tiderule.rules.conclusion.care.CautionLevel;
import io.github.tiderule.rules.conclusion.care.Position;
import io.github.tiderule.rules.conclusion.care.SheetFinding;
import io.github.tiderule.rules.conclusion.care.SheetLine;
import io.github.tiderule.rules.conclusion.care.SheetPart;
import io.github.tiderule.rules.conclusion.care.Topic;
import io.github.tiderule.rules.conclusion.care.Underdose;
import io.github.tiderule.rules.fact.Hours;
import io.github.tiderule.rules.fact.semen.Semen;
import io.github.tiderule.rules.semen.Insemination;
import io.github.tiderule.rules.semen.InseminationDay;
import io.github.tiderule.rules.semen.Wanted;
import io.github.tiderule.rules.sentence.Sentence;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Makes the sheet for the day of insemination: the semen's arithmetic and the rules' lines. */
public final class SheetMaking {

  private final Season season;
  private final Tools tools;
  private final Clock clock;
  private final SemenOnSheet semen;

  private SheetMaking(Season season, SemenOnSheet semen) {
    this.season = season;
    this.semen = semen;
    tools = season.tools();
    clock = season.clock();
  }

  /**
   * Begins a sheet.
   *
   * @param filed the season as it is on file
   */
  public static SheetMaking of(Season filed) {
    SemenOnSheet semen = SemenOnSheet.of(filed);
    return new SheetMaking(semen.withDose(filed), semen);
  }

  /** The season, with the dose that was counted where the file gave none of its own. */
  public Season season() {
    return season;
  }

  /**
   * What the rules are told of the day of insemination.
   *
   * @param wanted whether a sheet is made; it may be where the file describes no semen in hand
   */
  public List<Object> facts(boolean wanted) {
    if (season.insemination() != null) {
      return semen.facts();
    }
    return wanted ? List.of(new InseminationDay(semen.kind(), semen.route())) : List.of();
  }

  /** Whether a sheet is to be made: the file describes semen, or the plan's first dose is close. */
  public boolean wanted(Planned planned) {
    if (planned.standing().silent()) {
      return false;
    }
    return season.insemination() != null
        || (season.semenPlan().semen() != Semen.NATURAL
            && planned
                .first()
                .filter(
                    slot ->
                        Hours.between(season.asOf(), slot.from())
                            <= tools.value("insemination.sheet-hours"))
                .isPresent());
  }

  /** Findings about the semen that are cautions as well. */
  public static Stream<Ruled<Caution>> graveFindings(Care care) {
    return care.ruled(SheetFinding.class)
        .filter(ruled -> ruled.conclusion().level() != CautionLevel.CARE)
        .map(
            ruled ->
                new Ruled<>(
                    ruled.rule(),
                    Caution.of(ruled.conclusion().level(), ruled.conclusion().words())));
  }

  /** The sheet. */
  public InseminationSheet sheet(Care care, Planned planned) {
    @Nullable SemenInHand inHand = semen.inHand();
    @Nullable Span usable = inHand == null ? null : inHand.usable();
    @Nullable Insemination described = season.insemination();
    Wanted wanted = described == null ? Wanted.nothing() : described.wanted();
    @Nullable Instant at = at(planned);
    List<Sentence> notes = new ArrayList<>(semen.notes());
    boolean unusable = unusable(care);
    @Nullable Amount extender =
        unusable || inHand == null || inHand.semen() == Semen.FROZEN
            ? null
            : Dilution.of(inHand, wanted, semen.doses()).orElse(null);
    if (extender == null
        && !unusable
        && (wanted.volumeMl() != null || wanted.concentrationMillionPerMl() != null)) {
      notes.add(
          semen.kind() == Semen.FROZEN
              ? Sentence.of("What is added to thawed semen is the freezing centre's to say.")
              : Sentence.of(
                  "The extender cannot be reckoned: volume and concentration in hand are needed."));
    }
    List<Line> sameDay = lines(care, part -> part == SheetPart.SAME_DAY);
    return new InseminationSheet(
        at == null ? null : clock.offset(at),
        semen.kind(),
        semen.route(),
        inHand == null ? List.of() : inHand.lines(),
        usable == null
            ? null
            : new Amount(
                Sentence.of("usable sperm"),
                Sentence.of("all in hand"),
                usable.least(),
                usable.most(),
                AmountUnit.MILLION),
        inHand == null ? List.of() : DoseCount.of(inHand, tools.rules().parameters()),
        extender,
        inHand == null
            ? null
            : TemperatureMatch.of(
                semen.kind(),
                semen.temperatureC(),
                unusable || described == null ? null : described.extenderTemperatureC(),
                tools.rules().parameters()),
        findings(care),
        sameDay,
        secondParcelBy(care, planned.breeding(), at),
        unusable ? List.of() : lines(care, SheetPart::isStep),
        unusable ? List.of() : advice(care),
        notes);
  }

  /** Whether nobody is inseminated with it, so that nothing is told of how. */
  private static boolean unusable(Care care) {
    return Stream.concat(
            care.all(Caution.class).stream().map(Caution::about),
            care.all(SheetFinding.class).stream().map(SheetFinding::about))
        .anyMatch(about -> about == About.UNUSABLE_DOSE);
  }

  private @Nullable Instant at(Planned planned) {
    @Nullable Insemination described = season.insemination();
    if (described != null && described.at() != null) {
      return described.at();
    }
    return planned.first().map(clock::quarter).orElse(null);
  }

  private static List<Warning> findings(Care care) {
    Stream<Ruled<Caution>> ofDoses =
        care.ruled(Caution.class).filter(ruled -> ruled.conclusion().about() == About.DOSE);
    Stream<Ruled<Caution>> seen =
        care.ruled(SheetFinding.class)
            .map(
                ruled ->
                    new Ruled<>(
                        ruled.rule(),
                        Caution.of(ruled.conclusion().level(), ruled.conclusion().words())));
    return Warnings.of(Stream.concat(seen, ofDoses));
  }

  private static List<Line> lines(Care care, Predicate<SheetPart> wanted) {
    return care.ruled(SheetLine.class)
        .filter(ruled -> wanted.test(ruled.conclusion().part()))
        .sorted(
            Comparator.comparing((Ruled<SheetLine> ruled) -> ruled.conclusion().part())
                .thenComparing(ruled -> ruled.conclusion().place())
                .thenComparing(ruled -> ruled.rule().id()))
        .map(
            ruled ->
                new Line(
                    ruled.conclusion().part(),
                    ruled.conclusion().words(),
                    ruled.conclusion().veterinaryAct(),
                    ruled.rule().id(),
                    ruled.rule().sources()))
        .toList();
  }

  /** Route, then volume by every school there is, then reach. */
  private static List<Line> advice(Care care) {
    List<Line> advice = new ArrayList<>(lines(care, part -> part == SheetPart.ROUTE));
    care.ruled(Position.class)
        .filter(ruled -> ruled.conclusion().about() == Topic.VOLUME)
        .map(
            ruled ->
                new Line(
                    SheetPart.VOLUME,
                    ruled.conclusion().words(),
                    false,
                    ruled.rule().id(),
                    ruled.rule().sources()))
        .forEach(advice::add);
    advice.addAll(lines(care, part -> part == SheetPart.VOLUME || part == SheetPart.CATHETER));
    return advice;
  }

  /** The last day after the insemination that is still worth a good share of the best one. */
  private @Nullable LocalDate secondParcelBy(
      Care care, @Nullable Breeding breeding, @Nullable Instant at) {
    boolean asked =
        care.all(Underdose.class).stream().anyMatch(low -> low.semen() == Semen.CHILLED);
    if (!asked || breeding == null) {
      return null;
    }
    LocalDate after = (at == null ? season.asOf() : at).atZone(clock.zone()).toLocalDate();
    double best =
        breeding.days().stream().mapToDouble(day -> day.eggShare().mean()).max().orElse(0);
    double least = best * tools.value("insemination.second-parcel-share");
    return breeding.days().stream()
        .filter(day -> day.eggShare().mean() >= least)
        .map(BreedingDay::day)
        .filter(day -> day.isAfter(after))
        .max(Comparator.naturalOrder())
        .orElse(null);
  }
}
