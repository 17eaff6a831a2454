package org.airfit.plug;

import java.util.Objects;
import org.airfit.internal.Digits;
import org.airfit.measure.PartSpread;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.working.UnitSystem;

/**
 * How one reading lies to one profile.
 *
 * <p>Nobody but the identification makes one. This class is immutable and thread-safe.
 */
public final class Residual {

  private static final double AGREES = 2.0;
  private static final double STRAINED = 3.0;

  private final PlugReading reading;
  private final PartSpread spread;
  private final double differenceMillimetres;
  private final Length scatter;
  private final double sigmas;
  private final Length allowedWear;

  /** Checks that nothing is missing. */
  Residual(
      PlugReading reading,
      PartSpread spread,
      double differenceMillimetres,
      Length scatter,
      double sigmas,
      Length allowedWear) {
    this.reading = Objects.requireNonNull(reading, "reading");
    this.spread = Objects.requireNonNull(spread, "spread");
    this.differenceMillimetres = differenceMillimetres;
    this.scatter = Objects.requireNonNull(scatter, "scatter");
    this.sigmas = sigmas;
    this.allowedWear = Objects.requireNonNull(allowedWear, "allowedWear");
  }

  /** {@return what was read} */
  public PlugReading reading() {
    return reading;
  }

  /** {@return what the profile says of that dimension} */
  public PartSpread spread() {
    return spread;
  }

  /** {@return the reading less the nominal [mm]} */
  public double differenceMillimetres() {
    return differenceMillimetres;
  }

  /** {@return one standard deviation of such readings on plugs of this profile} */
  public Length scatter() {
    return scatter;
  }

  /**
   * {@return how far the reading lies from what is allowed, in standard deviations, signed; limits and wear are
   * allowed}
   */
  public double sigmas() {
    return sigmas;
  }

  /** {@return the wear that was allowed here; zero where none was} */
  public Length allowedWear() {
    return allowedWear;
  }

  /** {@return what was measured} */
  public Dimension dimension() {
    return reading.dimension();
  }

  /**
   * {@return one sentence without a full stop, such as "tip diameter (D_t) reads 18.75 mm, 0.03 mm above nominal:
   * agrees"}
   */
  public String inWords() {
    return inWords(UnitSystem.SI);
  }

  /**
   * Tells the same in millimetres or inches.
   *
   * @param units the units
   * @return one sentence without a full stop
   */
  public String inWords(UnitSystem units) {
    LengthUnit unit = units == UnitSystem.SI ? LengthUnit.MILLIMETRE : LengthUnit.INCH;
    int decimals = units == UnitSystem.SI ? 2 : 4;
    Length away = Length.ofMillimetres(Math.abs(differenceMillimetres));
    String side = away.millimetres() < 0.005
        ? "at nominal"
        : away.format(unit, decimals) + (differenceMillimetres > 0 ? " above" : " below")
            + " nominal";
    return dimension() + " reads " + reading.length().format(unit, decimals) + ", " + side + ": "
        + judgement();
  }

  private String judgement() {
    if (sigmas == 0.0) {
      if (spread instanceof PartSpread.Limits limits
          && reading.length().compareTo(limits.low()) >= 0
          && reading.length().compareTo(limits.high()) <= 0) {
        return "inside the limits";
      }
      double asNew = Math.abs(differenceMillimetres) / scatter().millimetres();
      return differenceMillimetres == 0.0
          ? "agrees"
          : asNew <= AGREES
              ? "agrees, " + Digits.fixed(asNew, 1) + " times the expected scatter as new"
              : "agrees, if worn by that much";
    }
    double away = Math.abs(sigmas);
    String times = Digits.fixed(away, 1) + " times the expected scatter"
        + (wearHelps() ? ", wear allowed for" : "");
    if (away <= AGREES) {
      return "agrees, " + times;
    }
    return (away <= STRAINED ? "strained, " : "does not agree, ") + times + wrongWay();
  }

  private boolean wearHelps() {
    return allowedWear.metres() > 0.0 && dimension().wear().sign() * differenceMillimetres > 0.0;
  }

  private String wrongWay() {
    return dimension().wear().sign() * differenceMillimetres < 0.0
        ? ", and wear changes it the other way"
        : "";
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Residual that
        && reading.equals(that.reading)
        && spread.equals(that.spread)
        && Double.compare(differenceMillimetres, that.differenceMillimetres) == 0
        && scatter.equals(that.scatter)
        && Double.compare(sigmas, that.sigmas) == 0
        && allowedWear.equals(that.allowedWear);
  }

  @Override
  public int hashCode() {
    return Objects.hash(reading, spread, differenceMillimetres, scatter, sigmas, allowedWear);
  }

  /** {@return the same as {@link #inWords()}} */
  @Override
  public String toString() {
    return inWords();
  }
}
