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
 * @param reading what was read
 * @param spread what the profile says of that dimension
 * @param differenceMillimetres the reading less the nominal [mm]
 * @param scatter one standard deviation of such readings on plugs of this profile
 * @param sigmas how far the reading lies from what is allowed, in standard deviations, signed; limits and wear are
 *     allowed
 * @param allowedWear the wear that was allowed here; zero where none was
 */
public record Residual(
    PlugReading reading,
    PartSpread spread,
    double differenceMillimetres,
    Length scatter,
    double sigmas,
    Length allowedWear) {
  /**
   * Checks that nothing is missing.
   *
   * @param reading what was read
   * @param spread what the profile says of that dimension
   * @param differenceMillimetres the reading less the nominal [mm]
   * @param scatter one standard deviation of such readings on plugs of this profile
   * @param sigmas how far the reading lies from what is allowed, in standard deviations, signed; limits and wear are
   *     allowed
   * @param allowedWear the wear that was allowed here; zero where none was
   */
  public Residual {
    Objects.requireNonNull(reading, "reading");
    Objects.requireNonNull(spread, "spread");
    Objects.requireNonNull(scatter, "scatter");
    Objects.requireNonNull(allowedWear, "allowedWear");
  }

  private static final double AGREES = 2.0;
  private static final double STRAINED = 3.0;

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

  /** The same in millimetres or inches. */
  String inWords(UnitSystem units) {
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
      return differenceMillimetres == 0.0 ? "agrees" : "agrees, if worn by that much";
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
}
