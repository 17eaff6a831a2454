package org.airfit.plug;

import org.airfit.plug.Dimension.Access;
import org.airfit.quantity.Length;
import org.airfit.source.Source;

/**
 * Classes of calipers, with the uncertainty of one reading taken by a careful user.
 *
 * <pre>
 *   u² = (MPE/√3)² + (a/√3)²
 * </pre>
 *
 * <table class="striped">
 * <caption>Symbols</caption>
 * <thead><tr><th>symbol</th><th>meaning</th><th>value</th></tr></thead>
 * <tbody>
 * <tr><td>MPE</td><td>limit of error of the caliper to 100 mm, DIN 862; inside and depth 0.02 mm more</td><td>0.02 or 0.05 mm</td></tr>
 * <tr><td>a</td><td>technique: repeat on a plain cylinder</td><td>0.01 mm</td></tr>
 * <tr><td>a</td><td>technique: a step or a groove found by eye and jaw (from memory, no source)</td><td>0.1 mm</td></tr>
 * <tr><td>a</td><td>technique: a bore with knife-edge jaws (from memory, no source)</td><td>0.05 mm</td></tr>
 * </tbody>
 * </table>
 *
 * <p>Limits become standard uncertainties by √3, as for a rectangular distribution (GUM 4.3.7, NIST TN 1297 4.6). The error of one
 * caliper is common to all its readings; here it is taken as independent, which is a simplification. Where you know better, from
 * repeats of your own, give {@link Reading} your own uncertainty.
 */
public enum Instrument {
  /** Digital caliper with a step of 0.01 mm. */
  DIGITAL_CALIPER("digital caliper 0.01 mm", 0.02),
  /** Vernier or dial caliper read to 0.02 mm. */
  VERNIER_CALIPER_0_02("vernier caliper 0.02 mm", 0.02),
  /** Vernier or dial caliper read to 0.05 mm. */
  VERNIER_CALIPER_0_05("vernier caliper 0.05 mm", 0.05);

  /** Where the error limits are from. */
  public static final Source ERROR_LIMITS = Source.standard(
      "DIN 862, limits of error to 100 mm, seen in a secondary one-page transcription");

  private static final double INSIDE_AND_DEPTH_MORE_MM = 0.02;

  /** The printed limits used here end at this reading. */
  private static final double RANGE_MM = 100.0;

  private final String label;
  private final double outsideLimitMm;

  Instrument(String label, double outsideLimitMm) {
    this.label = label;
    this.outsideLimitMm = outsideLimitMm;
  }

  /** {@return the class in words, such as "digital caliper 0.01 mm"} */
  public String label() {
    return label;
  }

  /**
   * Obtains the standard uncertainty of one careful reading of a dimension.
   *
   * @param dimension what is read
   * @return the standard uncertainty
   */
  public Length standardUncertainty(Dimension dimension) {
    double limit = dimension.access() == Access.OUTSIDE
        ? outsideLimitMm
        : outsideLimitMm + INSIDE_AND_DEPTH_MORE_MM;
    return Length.ofMillimetres(
        Math.hypot(limit, techniqueMm(dimension.access())) / Math.sqrt(3.0));
  }

  private static double techniqueMm(Access access) {
    return switch (access) {
      case OUTSIDE ->
        0.01; // repeatability printed in a training text on caliper calibration, taken as a half
      // width
      case STEP, GROOVE -> 0.1; // from memory, judgement
      case BORE -> 0.05; // from memory, judgement
    };
  }

  /**
   * Takes down a reading made with this class of instrument.
   *
   * @param dimension what was read
   * @param length what the instrument showed, above 0 and not more than 100 mm
   * @return the reading with its uncertainty
   * @throws IllegalArgumentException if {@code length} is outside the range
   */
  public Reading reading(Dimension dimension, Length length) {
    if (!(length.millimetres() <= RANGE_MM)) {
      throw new IllegalArgumentException(
          dimension + " must be in (0, 100] mm for the error limits of a " + label
              + ", was " + length.format(org.airfit.quantity.LengthUnit.MILLIMETRE)
              + "; give the reading an uncertainty of your own");
    }
    return new Reading(dimension, length, standardUncertainty(dimension));
  }
}
