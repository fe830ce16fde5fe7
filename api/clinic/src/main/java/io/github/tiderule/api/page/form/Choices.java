package io.github.tiderule.api.page.form;

import io.github.tiderule.rules.fact.Certainty;
import io.github.tiderule.rules.fact.EarlierKind;
import io.github.tiderule.rules.fact.TreatmentForm;
import io.github.tiderule.rules.fact.TreatmentKind;
import io.github.tiderule.rules.fact.TreatmentPurpose;
import io.github.tiderule.rules.fact.Worded;
import io.github.tiderule.rules.fact.assay.Handling;
import io.github.tiderule.rules.fact.assay.Method;
import io.github.tiderule.rules.fact.assay.Specimen;
import io.github.tiderule.rules.fact.assay.Tube;
import io.github.tiderule.rules.fact.assay.Unit;
import io.github.tiderule.rules.fact.observation.Folds;
import io.github.tiderule.rules.fact.observation.Neutrophils;
import io.github.tiderule.rules.fact.observation.OvaryFinding;
import io.github.tiderule.rules.fact.observation.RefusalReason;
import io.github.tiderule.rules.fact.observation.ScanFinding;
import io.github.tiderule.rules.fact.observation.SignKind;
import io.github.tiderule.rules.fact.semen.Route;
import io.github.tiderule.rules.fact.semen.Semen;
import io.github.tiderule.rules.fact.semen.SemenColour;
import io.github.tiderule.rules.semen.Fraction;
import io.github.tiderule.rules.semen.FrozenUnit;
import java.time.DayOfWeek;
import java.util.Arrays;
import java.util.List;

/**
 * The words forms offer, which are those of cycle files; the texts have each as {@code NAME.WORD}.
 */
public final class Choices {

  /** Stands for a unit nobody knows yet, which a cycle file leaves out. */
  public static final String NOT_STATED = "not-stated";

  public static final List<String> UNITS = words(Unit.values());

  /** Without the unknown one, which nothing chosen says. */
  public static final List<String> METHODS =
      Arrays.stream(Method.values())
          .filter(method -> method != Method.UNKNOWN)
          .map(Method::word)
          .toList();

  public static final List<String> SPECIMENS = words(Specimen.values());
  public static final List<String> TUBES = words(Tube.values());
  public static final List<String> HANDLING = words(Handling.values());
  public static final List<String> LH = List.of("positive", "negative");
  public static final List<String> NEUTROPHILS = words(Neutrophils.values());
  public static final List<String> FOLDS = words(Folds.values());
  public static final List<String> SIGNS_IN_SEASON =
      words(
          SignKind.STANDS,
          SignKind.REFUSES,
          SignKind.FLAGS,
          SignKind.VULVA_SOFTENS,
          SignKind.BLEEDING_STOPS);

  public static final List<String> SIGNS_OF_PREGNANCY =
      words(
          SignKind.WATERS_BROKEN,
          SignKind.STRAINING,
          SignKind.PUP_BORN,
          SignKind.GREEN_DISCHARGE,
          SignKind.TREMBLING);

  /** Those that are neither of the season nor of a pregnancy alone. */
  public static final List<String> SIGNS_OF_ILLNESS =
      Arrays.stream(SignKind.values())
          .map(SignKind::word)
          .filter(word -> !SIGNS_IN_SEASON.contains(word) && !SIGNS_OF_PREGNANCY.contains(word))
          .toList();

  public static final List<String> PRESENT = List.of("yes", "no");
  public static final List<String> FINDINGS = words(OvaryFinding.values());
  public static final List<String> SCAN_FINDINGS = words(ScanFinding.values());
  public static final List<String> SKELETON = List.of("yes", "no");
  public static final List<String> SEMEN = words(Semen.values());
  public static final List<String> FRACTIONS = words(Fraction.values());
  public static final List<String> APPEARANCES = words(SemenColour.values());
  public static final List<String> FROZEN_UNITS = words(FrozenUnit.values());
  public static final List<String> PREGNANT = List.of("yes", "no", "unknown");
  public static final List<String> ROUTES = words(Route.values());
  public static final List<String> CERTAINTIES = words(Certainty.values());
  public static final List<String> TREATMENTS = words(TreatmentKind.values());
  public static final List<String> TREATMENT_FORMS = words(TreatmentForm.values());
  public static final List<String> TREATMENT_PURPOSES = words(TreatmentPurpose.values());
  public static final List<String> REFUSALS = words(RefusalReason.values());
  public static final List<String> REACHABLE = List.of("yes", "no");
  public static final List<String> EARLIER_KINDS = words(EarlierKind.values());

  /** Whether a value is what it is, or lies beyond a limit. */
  public static final List<String> LIMITS = Reported.LIMITS;

  /** Why something is corrected or taken back. */
  public static final List<String> CORRECTIONS =
      List.of("slip", "unit", "time", "laboratory", "other-female");

  public static final List<String> WEEKDAYS =
      Arrays.stream(DayOfWeek.values()).map(DayOfWeek::name).toList();

  private Choices() {}

  private static List<String> words(Worded... all) {
    return Arrays.stream(all).map(Worded::word).toList();
  }
}
