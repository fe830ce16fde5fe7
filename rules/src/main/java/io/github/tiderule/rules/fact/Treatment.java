package io.github.tiderule.rules.fact;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * A treatment she was given.
 *
 * @param on not after the moment of the advice
 * @param form how it was given, if known
 * @param purpose what for, if known
 * @param removedOn the day an implant was taken out, from {@code on} to the moment of the advice;
 *     absent where it is still in, or was none
 */
public record Treatment(
    TreatmentKind kind,
    LocalDate on,
    @Nullable TreatmentForm form,
    @Nullable TreatmentPurpose purpose,
    @Nullable LocalDate removedOn) {

  /** A treatment of which no more is known. */
  public Treatment(TreatmentKind kind, LocalDate on) {
    this(kind, on, null, null, null);
  }

  /** As it was given. */
  public Treatment form(TreatmentForm given) {
    return new Treatment(kind, on, given, purpose, removedOn);
  }

  /** With what it was given for. */
  public Treatment purpose(TreatmentPurpose meant) {
    return new Treatment(kind, on, form, meant, removedOn);
  }

  /** With the day its implant was taken out, not before it was put in. */
  public Treatment removedOn(LocalDate day) {
    return new Treatment(kind, on, form, purpose, day);
  }

  /** The day it was given, or its implant taken out. */
  public LocalDate lastDay() {
    return removedOn == null ? on : removedOn;
  }

  /** Whether it is a corticosteroid that is said to act shortly. */
  public boolean shortSteroid() {
    return kind == TreatmentKind.GLUCOCORTICOID && form == TreatmentForm.SHORT_ACTING;
  }

  /** Whether it was given to bring her into heat. */
  public boolean induced() {
    return purpose == TreatmentPurpose.INDUCTION;
  }

  /** Whether it is an implant that nobody says is out; deslorelin is given as one. */
  public boolean implantIn() {
    boolean implant =
        form == TreatmentForm.IMPLANT || (form == null && kind == TreatmentKind.DESLORELIN);
    return implant && removedOn == null;
  }
}
