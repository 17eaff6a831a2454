package org.airfit.measure;

import java.util.Objects;
import java.util.Optional;
import org.airfit.internal.Digits;
import org.airfit.internal.ToleranceFactors;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.source.Source;
import org.airfit.working.Formula;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/**
 * Limits between which, or one limit below or above which, a stated share of all parts lies, with a stated confidence,
 * as far as the pieces measured show it.
 *
 * <pre>
 *   x̄ ± k s,   x̄ + k s   or   x̄ − k s
 * </pre>
 *
 * <table class="striped">
 * <caption>Symbols</caption>
 * <thead><tr><th>symbol</th><th>meaning</th><th>unit</th></tr></thead>
 * <tbody>
 * <tr><td>x̄, s</td><td>mean and standard deviation of the pieces</td><td>mm</td></tr>
 * <tr><td>k</td><td>factor for the count of pieces, the share and the confidence</td><td>-</td></tr>
 * </tbody>
 * </table>
 *
 * <p><b>Valid</b> for parts that vary at random and about normally, and for readings: what the caliper itself is off
 * comes on top. The factors are exact (one-sided noncentral t, two-sided the integral over mean and standard
 * deviation), because the usual closed formulas are up to a third off for two or three pieces. <b>Source:</b>
 * NIST/SEMATECH e-Handbook of Statistical Methods, 7.2.6.3; the exact forms as printed in manuals of statistics
 * programs.
 *
 * <p>Where 95 % of all pieces lie, with 95 % confidence, by ten that were measured:
 *
 * <pre>{@code
 * import java.util.Locale;
 * import org.airfit.measure.PartSpread;
 * import org.airfit.measure.ToleranceInterval;
 * import org.airfit.quantity.Length;
 *
 * class MostPieces {
 *   public static void main(String[] args) {
 *     PartSpread.Sample ten =
 *         new PartSpread.Sample(10, Length.parse("12.00 mm"), Length.parse("0.03 mm"));
 *     ToleranceInterval interval = ToleranceInterval.between(ten, 0.95, 0.95);
 *     System.out.printf(Locale.ROOT, "k = %.3f%n", interval.factor()); // k = 3.393
 *   }
 * }
 * }</pre>
 *
 * @param sample what the pieces measured
 * @param sides which limits
 * @param coverage the share of all parts, in [0.5, 0.9999]
 * @param confidence the chance that the limits hold that share, in [0.5, 0.9999]
 */
public record ToleranceInterval(
    PartSpread.Sample sample, Sides sides, double coverage, double confidence) implements Worked {

  /** The most pieces for which a factor is computed; with so many, mean and deviation are as good as known. */
  public static final int MOST_PIECES = 100_000;

  private static final double LEAST = 0.5;
  private static final double MOST = 0.9999;
  private static final int DIGITS = 6;

  private static final Source HANDBOOK =
      Source.handbook("NIST/SEMATECH e-Handbook of Statistical Methods, 7.2.6.3");

  private static final Symbol MEAN = Symbol.of("x̄", "\\bar x", ValueKind.SMALL_LENGTH);
  private static final Symbol DEVIATION = Symbol.of("s", ValueKind.SMALL_LENGTH);
  private static final Symbol FACTOR = Symbol.of("k", ValueKind.NUMBER);
  private static final Symbol LOW = Symbol.of("x low", "x_\\mathrm{low}", ValueKind.SMALL_LENGTH);
  private static final Symbol HIGH =
      Symbol.of("x high", "x_\\mathrm{high}", ValueKind.SMALL_LENGTH);
  private static final Formula LOWER = Formula.of(
      "lower tolerance limit",
      "⟨x low⟩ = ⟨x̄⟩ − ⟨k⟩ × ⟨s⟩",
      HANDBOOK,
      LOW,
      MEAN,
      FACTOR,
      DEVIATION);
  private static final Formula UPPER = Formula.of(
      "upper tolerance limit",
      "⟨x high⟩ = ⟨x̄⟩ + ⟨k⟩ × ⟨s⟩",
      HANDBOOK,
      HIGH,
      MEAN,
      FACTOR,
      DEVIATION);

  /** Which limits are asked for. */
  public enum Sides {
    /** Two limits, and the share lies between them. */
    BETWEEN,
    /** One limit, and the share lies below it. */
    AT_MOST,
    /** One limit, and the share lies above it. */
    AT_LEAST
  }

  /**
   * Checks the share, the confidence and the count of pieces.
   *
   * @param sample what the pieces measured
   * @param sides which limits
   * @param coverage the share of all parts, in [0.5, 0.9999]
   * @param confidence the chance that the limits hold that share, in [0.5, 0.9999]
   * @throws IllegalArgumentException if one of them is outside its range, or there are more than 100 000 pieces
   */
  public ToleranceInterval {
    Objects.requireNonNull(sample, "sample");
    Objects.requireNonNull(sides, "sides");
    requireShare("coverage", coverage);
    requireShare("confidence", confidence);
    if (sample.pieces() > MOST_PIECES) {
      throw new IllegalArgumentException("pieces for a tolerance interval must be at most "
          + MOST_PIECES + ", were " + sample.pieces()
          + "; with so many the normal distribution itself gives the limits");
    }
  }

  private static void requireShare(String name, double share) {
    if (!(share >= LEAST && share <= MOST)) {
      throw new IllegalArgumentException(
          name + " must be in [" + LEAST + ", " + MOST + "], was " + share);
    }
  }

  /**
   * Obtains the two limits between which a share of all parts lies.
   *
   * @param sample what the pieces measured
   * @param coverage the share, in [0.5, 0.9999]
   * @param confidence the chance that the limits hold that share, in [0.5, 0.9999]
   * @return the limits
   * @throws IllegalArgumentException if an argument is outside its range
   */
  public static ToleranceInterval between(
      PartSpread.Sample sample, double coverage, double confidence) {
    Objects.requireNonNull(sample, "sample");
    return new ToleranceInterval(sample, Sides.BETWEEN, coverage, confidence);
  }

  /**
   * Obtains the limit that a share of all parts does not exceed.
   *
   * @param sample what the pieces measured
   * @param coverage the share, in [0.5, 0.9999]
   * @param confidence the chance that the limit holds that share, in [0.5, 0.9999]
   * @return the limit
   * @throws IllegalArgumentException if an argument is outside its range
   */
  public static ToleranceInterval atMost(
      PartSpread.Sample sample, double coverage, double confidence) {
    Objects.requireNonNull(sample, "sample");
    return new ToleranceInterval(sample, Sides.AT_MOST, coverage, confidence);
  }

  /**
   * Obtains the limit that a share of all parts reaches.
   *
   * @param sample what the pieces measured
   * @param coverage the share, in [0.5, 0.9999]
   * @param confidence the chance that the limit holds that share, in [0.5, 0.9999]
   * @return the limit
   * @throws IllegalArgumentException if an argument is outside its range
   */
  public static ToleranceInterval atLeast(
      PartSpread.Sample sample, double coverage, double confidence) {
    Objects.requireNonNull(sample, "sample");
    return new ToleranceInterval(sample, Sides.AT_LEAST, coverage, confidence);
  }

  /** {@return the factor k} */
  public double factor() {
    return sides == Sides.BETWEEN
        ? ToleranceFactors.twoSided(sample.pieces(), coverage, confidence)
        : ToleranceFactors.oneSided(sample.pieces(), coverage, confidence);
  }

  /** {@return how far a limit lies from the mean} */
  public Length reach() {
    return sample.sampleDeviation().times(factor());
  }

  /**
   * {@return the lower limit; empty if none was asked for, or if it would not lie above 0, so that the pieces show no
   * lower limit}
   */
  public Optional<Length> low() {
    Length reach = reach();
    return sides == Sides.AT_MOST || reach.compareTo(sample.mean()) >= 0
        ? Optional.empty()
        : Optional.of(sample.mean().minus(reach));
  }

  /** {@return the upper limit; empty if none was asked for} */
  public Optional<Length> high() {
    return sides == Sides.AT_LEAST
        ? Optional.empty()
        : Optional.of(sample.mean().plus(reach()));
  }

  /** {@return the limits in words} */
  public String inWords() {
    String share = "With " + percent(confidence) + " confidence, " + percent(coverage)
        + " of all pieces read ";
    String from = sample.pieces() + " pieces";
    Optional<Length> low = low();
    Optional<Length> high = high();
    if (low.isPresent() && high.isPresent()) {
      return share + mm(low.get()) + " to " + mm(high.get()) + " (" + from + ").";
    }
    if (high.isPresent()) {
      return share + "at most " + mm(high.get()) + " (" + from
          + (sides == Sides.BETWEEN ? "; too few for a lower limit" : "") + ").";
    }
    return low.isPresent()
        ? share + "at least " + mm(low.get()) + " (" + from + ")."
        : "There are too few pieces for a lower limit (" + from + ").";
  }

  private static String percent(double share) {
    return Digits.significant(100.0 * share, 6) + " %";
  }

  private static String mm(Length length) {
    return length.format(LengthUnit.MILLIMETRE, 2);
  }

  @Override
  public Working working(UnitSystem units) {
    Objects.requireNonNull(units, "units");
    Working.Builder out = Working.titled(
            "Tolerance limits for " + percent(coverage) + " of all parts with "
                + percent(confidence) + " confidence",
            units)
        .note("k is the exact factor for " + sample.pieces() + " pieces, "
            + (sides == Sides.BETWEEN
                ? "two-sided: the integral over mean and deviation"
                : "one-sided: t' / √n of the noncentral t distribution")
            + ", found by trial.")
        .given(MEAN, sample.mean().metres(), DIGITS)
        .given(DEVIATION, sample.sampleDeviation().metres(), DIGITS)
        .given(FACTOR, factor(), DIGITS);
    double mean = sample.mean().metres();
    double reach = reach().metres();
    if (sides != Sides.AT_MOST) {
      out.step(LOWER, mean - reach, DIGITS);
      if (low().isEmpty()) {
        out.note("The lower limit does not lie above 0: there are too few pieces for one.");
      }
    }
    if (sides != Sides.AT_LEAST) {
      out.step(UPPER, mean + reach, DIGITS);
    }
    return switch (sides) {
      case BETWEEN -> out.answer(LOW, HIGH).build();
      case AT_MOST -> out.answer(HIGH).build();
      case AT_LEAST -> out.answer(LOW).build();
    };
  }
}
