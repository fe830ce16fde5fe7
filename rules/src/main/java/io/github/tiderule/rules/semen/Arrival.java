package io.github.tiderule.rules.semen;

import io.github.tiderule.rules.fact.Digits;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * Chilled semen as it arrived.
 *
 * @param arrivedAt not before collection, if known
 * @param temperatureC of the semen or its box on opening, degrees Celsius, −30 to 60
 * @param volumeMl in millilitres, above 0, up to 200, if measured
 * @param concentrationMillionPerMl million sperm per mL of what arrived, 0–5000, if counted
 * @param totalSpermMillion million sperm in the parcel as the sender's sheet says, 0–20 000, if it
 *     does
 * @param progressivelyMotilePercent of a warmed drop, 0–100, if looked at
 * @param normalPercent 0–100, if counted
 */
public record Arrival(
    @Nullable Instant collectedAt,
    @Nullable Instant arrivedAt,
    @Nullable Double temperatureC,
    @Nullable Double volumeMl,
    @Nullable Double concentrationMillionPerMl,
    @Nullable Double totalSpermMillion,
    @Nullable Double progressivelyMotilePercent,
    @Nullable Double normalPercent) {

  /** A box nobody has looked into. */
  public static Arrival unknown() {
    return new Arrival(null, null, null, null, null, null, null, null);
  }

  /** With the moment of collection. */
  public Arrival collectedAt(Instant moment) {
    return new Arrival(
        moment,
        arrivedAt,
        temperatureC,
        volumeMl,
        concentrationMillionPerMl,
        totalSpermMillion,
        progressivelyMotilePercent,
        normalPercent);
  }

  /** With the moment of arrival, not before collection. */
  public Arrival arrivedAt(Instant moment) {
    return new Arrival(
        collectedAt,
        moment,
        temperatureC,
        volumeMl,
        concentrationMillionPerMl,
        totalSpermMillion,
        progressivelyMotilePercent,
        normalPercent);
  }

  /**
   * With the temperature on opening.
   *
   * @param celsius degrees Celsius, −30 to 60
   */
  public Arrival temperatureC(double celsius) {
    return new Arrival(
        collectedAt,
        arrivedAt,
        celsius,
        volumeMl,
        concentrationMillionPerMl,
        totalSpermMillion,
        progressivelyMotilePercent,
        normalPercent);
  }

  /**
   * With the volume.
   *
   * @param ml millilitres, above 0, up to 200
   */
  public Arrival volumeMl(double ml) {
    return new Arrival(
        collectedAt,
        arrivedAt,
        temperatureC,
        ml,
        concentrationMillionPerMl,
        totalSpermMillion,
        progressivelyMotilePercent,
        normalPercent);
  }

  /**
   * With the count here.
   *
   * @param density million sperm per mL, 0–5000
   */
  public Arrival concentrationMillionPerMl(double density) {
    return new Arrival(
        collectedAt,
        arrivedAt,
        temperatureC,
        volumeMl,
        density,
        totalSpermMillion,
        progressivelyMotilePercent,
        normalPercent);
  }

  /**
   * With the count of the sender's sheet.
   *
   * @param million sperm in the parcel, 0–20 000
   */
  public Arrival totalSpermMillion(double million) {
    return new Arrival(
        collectedAt,
        arrivedAt,
        temperatureC,
        volumeMl,
        concentrationMillionPerMl,
        million,
        progressivelyMotilePercent,
        normalPercent);
  }

  /**
   * With the share of a warmed drop that swims forward.
   *
   * @param percent 0–100
   */
  public Arrival progressivelyMotilePercent(double percent) {
    return new Arrival(
        collectedAt,
        arrivedAt,
        temperatureC,
        volumeMl,
        concentrationMillionPerMl,
        totalSpermMillion,
        percent,
        normalPercent);
  }

  /**
   * With the share of normal forms.
   *
   * @param percent 0–100
   */
  public Arrival normalPercent(double percent) {
    return new Arrival(
        collectedAt,
        arrivedAt,
        temperatureC,
        volumeMl,
        concentrationMillionPerMl,
        totalSpermMillion,
        progressivelyMotilePercent,
        percent);
  }

  /** Million sperm counted here: volume × concentration; absent unless both are known. */
  public @Nullable Double countedMillion() {
    return volumeMl == null || concentrationMillionPerMl == null
        ? null
        : Digits.significant(volumeMl * concentrationMillionPerMl, 12);
  }

  /**
   * Share of the sperm that the sender names and the count here lacks; negative where there are
   * more, absent unless both are known and the sender names some.
   */
  public @Nullable Double missingShare() {
    Double counted = countedMillion();
    return counted == null || totalSpermMillion == null || !(totalSpermMillion > 0)
        ? null
        : Digits.significant(1 - counted / totalSpermMillion, 12);
  }
}
