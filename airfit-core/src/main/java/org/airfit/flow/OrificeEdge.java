package org.airfit.flow;

import org.airfit.internal.Digits;
import org.airfit.source.Source;

/**
 * Edges of a hole and the discharge coefficients published for them.
 *
 * <p>The coefficient is the share of the loss-free flow that passes. The one to calculate with is what the orifice
 * tables of compressed-air handbooks give, where they give one, else the middle of the range. Through a sharp edge it
 * grows as the pressure behind falls: {@link #sharpCoefficient} follows that.
 *
 * <p><b>Sources:</b> beside each edge. Weisbach's measurements as in Encyclopaedia Britannica, 11th ed. (1911),
 * Hydraulics, section 63.
 */
public enum OrificeEdge {
  /** A hole drilled through a thin wall, a crack, a cut. */
  SHARP(
      "sharp edge",
      0.65,
      0.563,
      0.8414,
      Source.handbook(
          "orifice tables of compressed-air handbooks; NAVFAC MO-206 has 0.64 for leaks, Weisbach 0.563 to 0.788, "
              + "Perry's curve 0.60 to 0.84")),
  /** A nozzle with a well rounded entrance. */
  WELL_ROUNDED(
      "well rounded entrance",
      0.97,
      0.97,
      0.99,
      Source.handbook("orifice tables of compressed-air handbooks; Weisbach has 0.97 to 0.99")),
  /** A short straight tube with a sharp inner end. */
  SHORT_TUBE("short tube, sharp inner end", 0.825, 0.81, 0.84, Source.handbook("Weisbach")),
  /** A short straight tube with a rounded inner end. */
  SHORT_TUBE_ROUNDED(
      "short tube, rounded inner end", 0.925, 0.92, 0.93, Source.handbook("Weisbach")),
  /** A cone that narrows towards its mouth. */
  CONE("converging cone", 0.945, 0.90, 0.99, Source.handbook("Weisbach"));

  private final String label;
  private final double coefficient;
  private final double least;
  private final double most;
  private final Source source;

  OrificeEdge(String label, double coefficient, double least, double most, Source source) {
    this.label = label;
    this.coefficient = coefficient;
    this.least = least;
    this.most = most;
    this.source = source;
  }

  /**
   * Obtains the discharge coefficient of a sharp edge by the pressures on both sides.
   *
   * <pre>
   *   Cd = 0.8414 − 0.1002 x + 0.8415 x² − 3.9 x³ + 4.6001 x⁴ − 1.6827 x⁵,   x = p2/p1
   * </pre>
   *
   * <p><b>Source:</b> curve attributed to Perry in the documentation of a general library of physical models.
   *
   * @param pressureRatio p2/p1 [-], in [0, 1]
   * @return Cd [-], from 0.841 into vacuum to 0.600 without a drop
   * @throws IllegalArgumentException if {@code pressureRatio} is out of range
   */
  public static double sharpCoefficient(double pressureRatio) {
    if (!(pressureRatio >= 0.0 && pressureRatio <= 1.0)) {
      throw new IllegalArgumentException(
          "pressure ratio p2/p1 must be in [0, 1], was " + Digits.told(pressureRatio));
    }
    double x = pressureRatio;
    return 0.8414 + x * (-0.1002 + x * (0.8415 + x * (-3.9 + x * (4.6001 - 1.6827 * x))));
  }

  /** {@return the edge in words} */
  public String label() {
    return label;
  }

  /** {@return the coefficient to calculate with [-]} */
  public double coefficient() {
    return coefficient;
  }

  /** {@return the least published for it [-]} */
  public double least() {
    return least;
  }

  /** {@return the most published for it [-]} */
  public double most() {
    return most;
  }

  /** {@return where the values come from} */
  public Source source() {
    return source;
  }
}
