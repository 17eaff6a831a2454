package org.airfit.run;

import java.util.Objects;
import org.airfit.internal.Digits;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.PressureUnit;

/**
 * A pressure gauge, with what its readings may be off.
 *
 * <p>What is wrong with a gauge is partly the same in all its readings, and cancels when the same gauge is read at
 * rest and again while the tool runs; the rest is new in every reading:
 *
 * <pre>
 *   u  = L/√3
 *   cov = u² (1/2 + 1/4 p p′/S²)           two readings, p and p′, of one gauge
 *   var = the same with p = p′, + u²/4 + d²/12
 * </pre>
 *
 * <table class="striped">
 * <caption>Symbols</caption>
 * <thead><tr><th>symbol</th><th>meaning</th><th>unit</th></tr></thead>
 * <tbody>
 * <tr><td>L</td><td>limit of error, as EN 837-1 has it for a class, or told</td><td>Pa</td></tr>
 * <tr><td>S</td><td>top of the scale</td><td>Pa</td></tr>
 * <tr><td>d</td><td>step to which a reading is rounded</td><td>Pa</td></tr>
 * </tbody>
 * </table>
 *
 * <p>A limit becomes a standard uncertainty by √3, and a step by √12, as of even distributions (GUM 4.3.7, F.2.2.1).
 * Half of the variance is a shared offset, up to a quarter a shared error of scale, and a quarter friction and
 * hysteresis of each reading: these parts are our choice, for the standard tells their sum alone. Two gauges share
 * nothing.
 *
 * @param name what to call it, different from the others, such as "gauge A"
 * @param topOfScale the pressure at the top of its scale, above 0
 * @param limit the limit of its error, above 0 and at most half of the scale
 * @param step to what a reading is rounded, such as a printed division; at most half of the scale
 */
public record PressureGauge(
    String name, GaugePressure topOfScale, PressureDrop limit, PressureDrop step) {

  /** The part of u² that is one offset of all readings: our choice. */
  static final double OFFSET_SHARE = 0.5;

  /** The part of u² at the top of the scale that is an error of scale: our choice. */
  static final double SCALE_SHARE = 0.25;

  /** The part of u² that is new in every reading: our choice. */
  static final double READING_SHARE = 0.25;

  /**
   * Checks the components.
   *
   * @param name what to call it, different from the others
   * @param topOfScale the pressure at the top of its scale, above 0
   * @param limit the limit of its error, above 0 and at most half of the scale
   * @param step to what a reading is rounded; at most half of the scale
   * @throws IllegalArgumentException if a component is out of range
   */
  public PressureGauge {
    if (Objects.requireNonNull(name, "name").isBlank()) {
      throw new IllegalArgumentException("name of a gauge must say which, was blank");
    }
    if (!(Objects.requireNonNull(topOfScale, "topOfScale").pascals() > 0.0)) {
      throw new IllegalArgumentException(
          "top of the scale of " + name + " must be above 0 Pa(g), was " + topOfScale.shown());
    }
    double half = 0.5 * topOfScale.pascals();
    if (!(Objects.requireNonNull(limit, "limit").pascals() > 0.0 && limit.pascals() <= half)) {
      throw new IllegalArgumentException(
          "limit of error of " + name + " must be above 0 and at most "
              + Digits.told(half) + " Pa (half of its scale), was " + limit.shown()
              + "; no gauge is perfect, take it from its class");
    }
    if (!(Objects.requireNonNull(step, "step").pascals() <= half)) {
      throw new IllegalArgumentException("step of " + name + " must be at most " + Digits.told(half)
          + " Pa (half of its scale), was " + step.shown());
    }
  }

  /**
   * Obtains a gauge of a class.
   *
   * @param name what to call it, different from the others
   * @param accuracy the class on its dial
   * @param topOfScale the pressure at the top of its scale, above 0
   * @param step to what a reading is rounded, such as a printed division
   * @return the gauge
   * @throws IllegalArgumentException if an argument is out of range
   */
  public static PressureGauge ofClass(
      String name, GaugeClass accuracy, GaugePressure topOfScale, PressureDrop step) {
    Objects.requireNonNull(accuracy, "accuracy");
    return new PressureGauge(name, topOfScale, accuracy.limitOfError(topOfScale), step);
  }

  /** The covariance [Pa²] of two readings of this gauge [Pa]. */
  double covariance(double one, double other) {
    double square = limit.pascals() * limit.pascals() / 3.0;
    double top = topOfScale.pascals();
    return square * (OFFSET_SHARE + SCALE_SHARE * (one / top) * (other / top));
  }

  /** What a reading has of its own [Pa²]: friction, hysteresis and rounding. */
  double ownVariance() {
    double square = limit.pascals() * limit.pascals() / 3.0;
    return READING_SHARE * square + step.pascals() * step.pascals() / 12.0;
  }

  /** {@return the gauge in one line, such as "gauge A, 0 to 10 bar, error up to 0.16 bar, read to 0.1 bar"} */
  @Override
  public String toString() {
    return name + ", 0 to " + topOfScale.format(PressureUnit.BAR) + ", error up to "
        + limit.format(PressureUnit.BAR) + ", read to " + step.format(PressureUnit.BAR);
  }
}
