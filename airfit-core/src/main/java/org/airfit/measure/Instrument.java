package org.airfit.measure;

import java.util.Objects;
import org.airfit.internal.Labels;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.source.Source;

/**
 * Classes of calipers, with the uncertainty of one reading, or of the mean of several, taken by a careful user.
 *
 * <pre>
 *   u² = (MPE/√3)² + t²/n,   t = a/√3, or the standard deviation of the repeats where that is larger
 *   (MPE/√3)² = c² + (d/√12)²
 * </pre>
 *
 * <table class="striped">
 * <caption>Symbols</caption>
 * <thead><tr><th>symbol</th><th>meaning</th><th>value</th></tr></thead>
 * <tbody>
 * <tr><td>MPE</td><td>limit of error, DIN 862; inside and depth 0.02 mm more</td><td>0.02 to 0.08 mm</td></tr>
 * <tr><td>a</td><td>technique: repeat on a plain cylinder</td><td>0.01 mm</td></tr>
 * <tr><td>a</td><td>technique: a step or groove found by eye and jaw (from memory)</td><td>0.1 mm</td></tr>
 * <tr><td>a</td><td>technique: a bore with knife-edge jaws (from memory, no source)</td><td>0.05 mm</td></tr>
 * <tr><td>n</td><td>how many readings the mean is of</td><td>-</td></tr>
 * <tr><td>d</td><td>step, to which every reading is rounded</td><td>0.01 to 0.05 mm</td></tr>
 * <tr><td>c</td><td>what all readings with one caliper share</td><td>mm</td></tr>
 * </tbody>
 * </table>
 *
 * <p>Limits become standard uncertainties by √3, as for a rectangular distribution (GUM 4.3.7, NIST TN 1297 4.6). The
 * error of one caliper is common to all repeats of a dimension: averaging never makes it smaller, only the technique.
 * It is common to all dimensions of a plug as well, see {@link #commonUncertainty}. Rounding to the step is in the
 * limit, which holds for the value shown, but it is no common error: each reading is rounded for itself, evenly within
 * half a step, which is d/√12 (GUM F.2.2.1), 0.0144 mm for a step of 0.05 mm; and repeats that all round alike make it
 * no smaller. Where you know better, give {@link Reading#of} your own uncertainty.
 */
public enum Instrument {
  /** Digital caliper with a step of 0.01 mm. */
  DIGITAL_CALIPER("digital caliper 0.01 mm", 0.01),
  /** Vernier or dial caliper read to 0.02 mm. */
  VERNIER_CALIPER_0_02("vernier caliper 0.02 mm", 0.02),
  /** Vernier or dial caliper read to 0.05 mm. */
  VERNIER_CALIPER_0_05("vernier caliper 0.05 mm", 0.05);

  /** Where the error limits are from. */
  public static final Source ERROR_LIMITS = Source.standard(
      "DIN 862, limits of error to 600 mm, seen in a secondary one-page transcription");

  private static final double INSIDE_AND_DEPTH_MORE_MM = 0.02;

  /** No dimension of a plug is longer; the first band of the limits ends here. */
  private static final double PLUG_MM = 100.0;

  /** The printed limits end at this reading. */
  private static final double RANGE_MM = 600.0;

  private final String label;
  private final double stepMm;

  Instrument(String label, double stepMm) {
    this.label = label;
    this.stepMm = stepMm;
  }

  /** {@return the class in words, such as "digital caliper 0.01 mm"} */
  public String label() {
    return label;
  }

  /**
   * Finds the class by its label. Upper and lower case are alike.
   *
   * @param label the label, such as "digital caliper 0.01 mm"
   * @return the class
   * @throws IllegalArgumentException if no class has that label
   */
  public static Instrument parse(String label) {
    Objects.requireNonNull(label, "label");
    return Labels.parse("instrument", label, values());
  }

  /** {@return the smallest difference it shows} */
  public Length step() {
    return Length.ofMillimetres(stepMm);
  }

  /**
   * Obtains the limit of error of the class by DIN 862: outside as printed, inside, step and depth 0.02 mm more.
   *
   * @param access how the instrument gets at the size
   * @param length what it reads, above 0 and not more than 600 mm
   * @return the most that a good caliper is off, either way
   * @throws IllegalArgumentException if {@code length} is outside the range
   */
  public Length limitOfError(Access access, Length length) {
    Objects.requireNonNull(length, "length");
    Objects.requireNonNull(access, "access");
    double mm = length.millimetres();
    if (!(mm > 0.0 && mm <= RANGE_MM)) {
      throw new IllegalArgumentException(
          "length to read must be in (0, 600] mm for the error limits of a " + label + ", was "
              + length.inFull(LengthUnit.MILLIMETRE)
              + "; give the reading an uncertainty of your own");
    }
    return Length.ofMillimetres(limitMm(access, mm));
  }

  private double limitMm(Access access, double mm) {
    double outside = this == VERNIER_CALIPER_0_05
        ? (mm <= 300.0 ? 0.05 : mm <= 500.0 ? 0.07 : 0.08)
        : (mm <= PLUG_MM ? 0.02 : 0.03);
    return access == Access.OUTSIDE ? outside : outside + INSIDE_AND_DEPTH_MORE_MM;
  }

  /**
   * Obtains the standard uncertainty of one careful reading of a size of a plug, which is to say of up to 100 mm.
   *
   * @param access how the instrument gets at the size
   * @return the standard uncertainty
   */
  public Length standardUncertainty(Access access) {
    Objects.requireNonNull(access, "access");
    return Length.ofMillimetres(uncertaintyMm(access, PLUG_MM, techniqueMm(access)));
  }

  /**
   * Obtains the part of the standard uncertainty that all readings with one caliper share: its limit of error on
   * outside jaws to 100 mm, divided by √3, without the rounding to its step that is in that limit. What inside, step
   * and longer readings may be off beyond that is taken as their own, and so is the rounding.
   *
   * <pre>
   *   c² = MPE²/3 − d²/12
   * </pre>
   *
   * @return the common standard uncertainty
   */
  public Length commonUncertainty() {
    double limit = limitMm(Access.OUTSIDE, PLUG_MM);
    return Length.ofMillimetres(Math.sqrt(limit * limit / 3.0 - stepMm * stepMm / 12.0));
  }

  /**
   * Obtains the standard uncertainty of rounding to the step, which is each reading's own.
   *
   * <pre>
   *   d/√12
   * </pre>
   *
   * @return the standard uncertainty of an error spread evenly within half a step either way
   */
  public Length roundingUncertainty() {
    return Length.ofMillimetres(stepMm / Math.sqrt(12.0));
  }

  /** Standard uncertainty of a reading of {@code mm} whose technique scatters by so much [mm]. */
  double uncertaintyMm(Access access, double mm, double scatterMm) {
    return Math.hypot(limitMm(access, mm) / Math.sqrt(3.0), scatterMm);
  }

  /** The scatter of technique a/√3 [mm]. */
  double techniqueMm(Access access) {
    double half = switch (access) {
      // printed as repeatability in a training text on caliper calibration, taken as a half width
      case OUTSIDE -> 0.01;
      // judgement, from memory
      case STEP, GROOVE -> 0.1;
      case BORE -> 0.05;
    };
    return half / Math.sqrt(3.0);
  }

  /** {@return the class in words, which {@link #parse} reads} */
  @Override
  public String toString() {
    return label;
  }
}
