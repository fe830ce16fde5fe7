package io.github.tiderule.engine.insemination;

import io.github.tiderule.engine.advice.Amount;
import io.github.tiderule.engine.advice.AmountUnit;
import io.github.tiderule.rules.fact.Digits;
import io.github.tiderule.rules.semen.Wanted;
import io.github.tiderule.rules.sentence.Sentence;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * How much extender makes what is wanted of the semen in hand, in mL; never below 0.
 *
 * <pre>
 * a wanted volume W for each of D doses:      W·D − V
 * a wanted concentration K:                   N ÷ K − V
 * both, from semen of concentration C = N÷V:  take K·W·D ÷ C of semen, add W·D less that
 * </pre>
 *
 * with V mL and N million sperm in hand. Nothing is said of frozen semen: the freezing centre's
 * sheet says what is added to it.
 */
public final class Dilution {

  private final double inHandMl;
  private final @Nullable Span sperm;
  private final int doses;

  private Dilution(double inHandMl, @Nullable Span sperm, int doses) {
    this.inHandMl = inHandMl;
    this.sperm = sperm;
    this.doses = doses;
  }

  /**
   * The extender to add; empty where nothing is wanted, or where volume or sperm are not known.
   *
   * @param doses how many doses are made, at least 1
   */
  public static Optional<Amount> of(SemenInHand inHand, Wanted wanted, int doses) {
    Double volume = inHand.volumeMl();
    Double each = wanted.volumeMl();
    Double density = wanted.concentrationMillionPerMl();
    if (volume == null || !(volume > 0)) {
      return Optional.empty();
    }
    Dilution dilution = new Dilution(volume, inHand.sperm(), doses);
    if (each != null && density != null) {
      return dilution.toBoth(each, density);
    }
    return each != null
        ? Optional.of(dilution.toVolume(each))
        : density != null ? dilution.toConcentration(density) : Optional.empty();
  }

  private Amount toVolume(double each) {
    Span total = Span.of(each).times(doses);
    Span added = total.less(inHandMl);
    return amount(Sentence.of("{} − {:tenths} mL in hand", doses(each), inHandMl), added);
  }

  private Optional<Amount> toConcentration(double density) {
    if (sperm == null) {
      return Optional.empty();
    }
    Span added = sperm.over(density).less(inHandMl);
    return Optional.of(
        amount(
            Sentence.of(
                "{} million ÷ {:measured} million/mL − {:tenths} mL in hand",
                sperm.figures(),
                density,
                inHandMl),
            added));
  }

  private Optional<Amount> toBoth(double each, double density) {
    if (sperm == null || !(sperm.least() > 0)) {
      return Optional.empty();
    }
    double total = Digits.significant(each * doses, 12);
    double needed = total * density;
    // the more sperm there are in a millilitre, the less semen is taken
    Span taken =
        new Span(
            Digits.significant(needed * inHandMl / sperm.most(), 12),
            Digits.significant(needed * inHandMl / sperm.least(), 12));
    double most = Math.max(0, total - taken.least());
    double least = Math.max(0, total - taken.most());
    Sentence take =
        Sentence.of(
            "{} at {:measured} million/mL take {} mL of semen",
            doses(each),
            density,
            taken.figures());
    return Optional.of(
        amount(
            taken.most() > inHandMl
                ? Sentence.of(
                    "{}; that is more semen than the {:tenths} mL in hand", take, inHandMl)
                : take,
            new Span(Digits.significant(least, 12), Digits.significant(most, 12))));
  }

  private Sentence doses(double each) {
    return doses == 1
        ? Sentence.of("{:tenths} mL wanted", each)
        : Sentence.of("{:whole} × {:tenths} mL wanted", doses, each);
  }

  private static Amount amount(Sentence working, Span added) {
    return new Amount(
        Sentence.of("extender to add"),
        working,
        added.least(),
        added.most(),
        AmountUnit.MILLILITRES);
  }
}
