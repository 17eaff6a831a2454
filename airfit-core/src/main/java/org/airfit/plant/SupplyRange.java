package org.airfit.plant;

import java.util.Objects;
import java.util.Optional;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.PressureUnit;
import org.jspecify.annotations.Nullable;

/**
 * Between which pressures a supply can stand: what decides ratings and limits, and what decides the flow.
 *
 * <p>The worst case is judged, never the usual one. Flow is judged at the {@linkplain #lowest() lowest} pressure, the
 * cut-in of a compressor. Ratings, a blocked nozzle and cautions are judged at the {@linkplain #highest() highest}:
 * the setting of the relief valve, the cut-out, or, behind a regulator, what stands there when it has failed open. That
 * is all that stands in front of it, unless its maker tells a lower pressure. A limit that holds only because a
 * regulator works is one of its own: {@link #exceeds} asks what stands there {@linkplain #whileRegulated() while it
 * holds}, {@link #canExceed} what can.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class SupplyRange {

  /**
   * Two pressures that differ by less than this part are one [-]: a gauge pressure found as a difference of two
   * absolute ones is that much off the number somebody typed.
   */
  private static final double ROUNDING = 1.0e-13;

  private final GaugePressure usual;
  private final @Nullable GaugePressure lowest;
  private final @Nullable GaugePressure inFront;
  private final @Nullable GaugePressure whenFailed;
  private final boolean regulated;

  private SupplyRange(
      GaugePressure usual,
      @Nullable GaugePressure lowest,
      @Nullable GaugePressure inFront,
      @Nullable GaugePressure whenFailed,
      boolean regulated) {
    this.usual = usual;
    this.lowest = lowest;
    this.inFront = inFront;
    this.whenFailed = whenFailed;
    this.regulated = regulated;
    if (inFront != null && above(usual, inFront)) {
      throw new IllegalArgumentException("highest pressure must be at least the supply of "
          + usual.inFewestDigits() + ", was " + inFront.inFewestDigits()
          + "; give the setting of the relief valve or the cut-out of the compressor");
    }
    if (lowest != null && (above(lowest, usual) || !(lowest.pascals() > 0.0))) {
      throw new IllegalArgumentException(
          "lowest pressure must be above 0 bar(g) and at most the supply of "
              + usual.inFewestDigits() + ", was " + lowest.inFewestDigits()
              + "; give the cut-in of the compressor");
    }
    if (whenFailed != null && above(usual, whenFailed)) {
      throw new IllegalArgumentException("pressure behind a failed regulator must be at least the "
          + usual.inFewestDigits()
          + " it is set to, was " + whenFailed.inFewestDigits()
          + "; leave it out where its maker does not tell it");
    }
    if (whenFailed != null && inFront != null && above(whenFailed, inFront)) {
      throw new IllegalArgumentException(
          "pressure behind a failed regulator must be at most the highest of "
              + inFront.inFewestDigits()
              + " in front of it, was " + whenFailed.inFewestDigits()
              + "; correct one of the two, or leave it out: what is in front then counts");
    }
  }

  /**
   * Obtains the range of a supply of which one pressure is told.
   *
   * @param usual the pressure; behind a regulator, what it is set to
   * @return a range of that pressure alone
   */
  public static SupplyRange of(GaugePressure usual) {
    return new SupplyRange(Objects.requireNonNull(usual, "usual"), null, null, null, false);
  }

  /**
   * Obtains the range of a supply.
   *
   * @param supply the supply; of a {@link Compressor} cut-in and cut-out count, of a {@link Regulator} what stands in
   *     front of it
   * @param atmosphere the pressure against which gauges read
   * @return its range; that of a regulator without a pressure in front waits for {@link #withHighest}
   * @throws IllegalArgumentException if a pressure of the supply is below the atmosphere
   */
  public static SupplyRange of(Supply supply, AbsolutePressure atmosphere) {
    Objects.requireNonNull(supply, "supply");
    Objects.requireNonNull(atmosphere, "atmosphere");
    GaugePressure still = GaugePressure.of(supply.still().pressure(), atmosphere);
    if (supply instanceof Compressor compressor) {
      return of(still).withLowest(GaugePressure.of(compressor.cutIn(), atmosphere));
    }
    if (supply instanceof Regulator regulator) {
      SupplyRange range = of(still).regulated();
      Optional<GaugePressure> inFront =
          regulator.inFront().map(pressure -> GaugePressure.of(pressure, atmosphere));
      return inFront.isPresent() ? range.withHighest(inFront.get()) : range;
    }
    return of(still);
  }

  /**
   * Obtains this with the highest pressure that can occur; behind a regulator, in front of it.
   *
   * @param pressure the setting of the relief valve or the cut-out of the compressor, at least the usual pressure
   * @return this with {@code pressure}
   * @throws IllegalArgumentException if {@code pressure} is below the usual pressure, or below what was told to stand
   *     behind the regulator when it has failed
   */
  public SupplyRange withHighest(GaugePressure pressure) {
    Objects.requireNonNull(pressure, "pressure");
    return new SupplyRange(usual, lowest, pressure, whenFailed, regulated);
  }

  /**
   * Obtains this with the lowest pressure that the supply falls to while air is taken.
   *
   * @param pressure the cut-in of the compressor, above 0 and at most the usual pressure
   * @return this with {@code pressure}
   * @throws IllegalArgumentException if {@code pressure} is out of range
   */
  public SupplyRange withLowest(GaugePressure pressure) {
    Objects.requireNonNull(pressure, "pressure");
    return new SupplyRange(usual, pressure, inFront, whenFailed, regulated);
  }

  /** {@return this as the range behind a regulator that is set to the usual pressure} */
  public SupplyRange regulated() {
    return new SupplyRange(usual, lowest, inFront, whenFailed, true);
  }

  /**
   * Obtains this as the range behind a regulator whose maker tells what stands behind it when it has failed.
   *
   * @param failed the most that stands behind it then, at least the usual pressure and at most what stands in front
   * @return this behind that regulator
   * @throws IllegalArgumentException if {@code failed} is out of range: air does not rise above what feeds it
   */
  public SupplyRange regulated(GaugePressure failed) {
    Objects.requireNonNull(failed, "failed");
    return new SupplyRange(usual, lowest, inFront, failed, true);
  }

  /** {@return the pressure at which flow is judged: the cut-in; the usual pressure unless told} */
  public GaugePressure lowest() {
    return lowest == null ? usual : lowest;
  }

  /** {@return the usual pressure while nothing flows; behind a regulator, what it is set to} */
  public GaugePressure usual() {
    return usual;
  }

  /**
   * {@return the highest pressure that can occur, at which ratings and limits are judged: behind a regulator with the
   * regulator failed}
   *
   * @throws IllegalStateException if it stands behind a regulator of which neither the pressure in front nor that when
   *     it fails was told, see {@link #isWhole}
   */
  public GaugePressure highest() {
    if (!regulated) {
      return inFront == null ? usual : inFront;
    }
    if (whenFailed != null) {
      return whenFailed;
    }
    if (inFront == null) {
      throw new IllegalStateException(
          "the pressure in front of the regulator was not told; give it with withHighest, or what"
              + " stands behind it when it fails with regulated");
    }
    return inFront;
  }

  /** {@return whether the highest pressure is known; not, where only what a regulator is set to was told} */
  public boolean isWhole() {
    return !regulated || inFront != null || whenFailed != null;
  }

  /** {@return what stands there while the regulator holds; empty where there is none} */
  public Optional<GaugePressure> whileRegulated() {
    return regulated ? Optional.of(usual) : Optional.empty();
  }

  /**
   * Tells whether more than a limit can occur: a regulator failed, a compressor at cut-out.
   *
   * @param limit the limit; at it is not above it
   * @return whether more can occur; true whatever is not told, if the usual pressure is already above it
   * @throws IllegalStateException if the usual pressure is not above it, and what stands there when the regulator fails
   *     was not told, see {@link #isWhole}
   */
  public boolean canExceed(GaugePressure limit) {
    return above(usual, Objects.requireNonNull(limit, "limit")) || above(highest(), limit);
  }

  /**
   * Tells whether more than a limit occurs although the regulator, if there is one, holds.
   *
   * @param limit the limit; at it is not above it
   * @return whether more occurs
   */
  public boolean exceeds(GaugePressure limit) {
    return above(regulated ? usual : highest(), Objects.requireNonNull(limit, "limit"));
  }

  private static boolean above(GaugePressure one, GaugePressure other) {
    double rounding = ROUNDING * Math.max(Math.abs(one.pascals()), Math.abs(other.pascals()));
    return one.pascals() > other.pascals() + rounding;
  }

  private static String bar(GaugePressure pressure) {
    return pressure.format(PressureUnit.BAR);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof SupplyRange that
        && usual.equals(that.usual)
        && Objects.equals(lowest, that.lowest)
        && Objects.equals(inFront, that.inFront)
        && Objects.equals(whenFailed, that.whenFailed)
        && regulated == that.regulated;
  }

  @Override
  public int hashCode() {
    return Objects.hash(usual, lowest, inFront, whenFailed, regulated);
  }

  /**
   * {@return the range in words, such as "6 bar(g) to 8 bar(g)" or "7.4 bar(g) while the regulator holds, 8.5 bar(g) if
   * it fails"}
   */
  @Override
  public String toString() {
    String low = lowest == null ? "" : bar(lowest) + " to ";
    if (regulated) {
      return low + bar(usual) + " while the regulator holds, "
          + (isWhole() ? bar(highest()) + " if it fails" : "what it is if it fails not told");
    }
    return low + bar(highest());
  }
}
