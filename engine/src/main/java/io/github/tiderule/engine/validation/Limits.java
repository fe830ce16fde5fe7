package io.github.tiderule.engine.validation;

/** The limits of what a season's record may hold. */
public final class Limits {

  /** Progesterone, in whatever unit the laboratory prints. */
  public static final Range CONCENTRATION = Range.of(0, 10_000, "");

  public static final Range PERCENT = Range.of(0, 100, "%");
  public static final Range MILLIMETRES = Range.of(1, 120, "mm");

  /** A body temperature. */
  public static final Range BODY_CELSIUS = Range.of(30, 44, "degrees C");

  /** Pups of one litter, born or counted before. */
  public static final Range PUPS = Range.of(0, 30, "pups");

  public static final Range BODY_MASS = Range.of(0.5, 150, "kg");

  /** Litters, caesareans and missed pregnancies of one female. */
  public static final Range COUNT = Range.of(0, 40, "");

  public static final Range DOSES = Range.of(1, 4, "doses");

  /** Between doses, of transit, travel and chilled storage. */
  public static final Range HOURS = Range.of(0, 240, "hours");

  /** From drawing to result. */
  public static final Range TURNAROUND = Range.of(0, 336, "hours");

  /** In one dose. */
  public static final Range SPERM = Range.of(0, 1e11, "sperm");

  /** In a parcel, a straw, a vial or a pellet. */
  public static final Range MILLION_SPERM = Range.of(0, 20_000, "million sperm");

  public static final Range DENSITY = Range.of(0, 5000, "million per mL");
  public static final Range DENSITY_WANTED = Range.positive(5000, "million per mL");
  public static final Range MILLILITRES = Range.positive(200, "mL");

  /** Semen in hand and extender. */
  public static final Range CELSIUS = Range.of(0, 45, "°C");

  /** A box as it arrived: one left in the sun is news, not a slip. */
  public static final Range CELSIUS_ON_ARRIVAL = Range.of(-30, 60, "°C");

  /** Straws, vials or pellets. */
  public static final Range FROZEN_UNITS = Range.of(1, 200, "");

  /** Characters of an id. */
  public static final int ID = 64;

  /** Characters of a name. */
  public static final int NAME = 120;

  /** Characters of a result's own words. */
  public static final int AS_REPORTED = 200;

  /** Characters of a note. */
  public static final int NOTE = 500;

  public static final int OBSERVATIONS = 500;
  public static final int EARLIER_CYCLES = 50;
  public static final int TREATMENTS = 100;

  /** Tests of one dog. */
  public static final int TESTS = 100;

  /** Spans in which a breeding can take place. */
  public static final int SPANS = 100;

  public static final int HOLIDAYS = 100;

  /** Measured in one scan, in one way. */
  public static final int FETUSES = 30;

  /** Tubes of one ejaculate. */
  public static final int TUBES = 12;

  private Limits() {}
}
