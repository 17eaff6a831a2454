package org.airfit.joint;

import java.util.Objects;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.source.Source;

/**
 * What hose handbooks ask of a hose for compressed air, beside its bore.
 *
 * <pre>
 *   least burst = 4 × working pressure      test = 1.5 × working pressure
 * </pre>
 *
 * <p>The marking of the hose and its maker's rating come first. <b>Source:</b> RMA IP-2/2003, page 50 (burst) and table
 * 4-8 (length); the test pressure from another hose handbook.
 */
public final class HoseRules {

  /** Least burst over greatest working pressure of a hose for compressed air and other gases [-]. */
  public static final double DESIGN_RATIO = 4.0;

  /** Test pressure over rated working pressure [-]. */
  public static final double TEST_RATIO = 1.5;

  /** Where the design ratio comes from. */
  public static final Source DESIGN = Source.handbook("RMA IP-2/2003, p. 50");

  /** Where the tolerance of a cut comes from. */
  public static final Source CUT = Source.handbook("RMA IP-2/2003, table 4-8, p. 36");

  private static final double[] UP_TO_INCHES = {12.0, 24.0, 36.0, 48.0, 72.0};
  private static final double[] TOLERANCE_INCHES = {0.125, 0.188, 0.250, 0.375, 0.5};

  private HoseRules() {}

  /**
   * Obtains the pressure a hose for compressed air must bear at least before it bursts.
   *
   * @param working its greatest working pressure
   * @return four times {@code working}
   * @throws IllegalArgumentException if {@code working} is negative
   */
  public static GaugePressure leastBurst(GaugePressure working) {
    Objects.requireNonNull(working, "working");
    return times(working, DESIGN_RATIO);
  }

  /**
   * Obtains the greatest pressure a hose for compressed air may work at, by its burst pressure alone.
   *
   * @param burst the least pressure at which it bursts, as its maker states it
   * @return a quarter of {@code burst}; a lower rating on the hose comes first
   * @throws IllegalArgumentException if {@code burst} is negative
   */
  public static GaugePressure mostWorking(GaugePressure burst) {
    Objects.requireNonNull(burst, "burst");
    return times(burst, 1.0 / DESIGN_RATIO);
  }

  /**
   * Obtains the pressure a hose is tested at.
   *
   * @param working its rated working pressure
   * @return one and a half times {@code working}
   * @throws IllegalArgumentException if {@code working} is negative
   */
  public static GaugePressure test(GaugePressure working) {
    Objects.requireNonNull(working, "working");
    return times(working, TEST_RATIO);
  }

  private static GaugePressure times(GaugePressure pressure, double factor) {
    if (pressure.pascals() < 0.0) {
      throw new IllegalArgumentException(
          "pressure of a hose must be at least 0 Pa(g), was " + pressure.shown());
    }
    return GaugePressure.ofPascals(factor * pressure.pascals());
  }

  /**
   * Obtains how far the length of a cut hose may be off.
   *
   * @param length the length ordered, above 0
   * @return the tolerance to either side: 1/8 in up to 12 in, in steps to 1/2 in up to 72 in, 1 % above
   * @throws IllegalArgumentException if {@code length} is not above 0
   */
  public static Length cutTolerance(Length length) {
    Objects.requireNonNull(length, "length");
    if (!(length.metres() > 0.0)) {
      throw new IllegalArgumentException(
          "length of a cut hose must be above 0 m, was " + length.inFull(LengthUnit.METRE));
    }
    for (int i = 0; i < UP_TO_INCHES.length; i++) {
      if (length.compareTo(Length.ofInches(UP_TO_INCHES[i])) <= 0) {
        return Length.ofInches(TOLERANCE_INCHES[i]);
      }
    }
    return length.times(0.01);
  }
}
