package org.airfit.plant;

import java.util.Objects;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.PressureDrop;

/**
 * The pressures between which a compressor holds the air in front of its receiver.
 *
 * @param cutIn the pressure at which it is called
 * @param cutOut the pressure at which it is sent to rest, above {@code cutIn}
 */
public record PressureBand(GaugePressure cutIn, GaugePressure cutOut) {

  /**
   * Checks the components.
   *
   * @param cutIn the pressure at which it is called
   * @param cutOut the pressure at which it is sent to rest, above {@code cutIn}
   * @throws IllegalArgumentException if {@code cutOut} is not above {@code cutIn}, or that is not above 0
   */
  public PressureBand {
    Objects.requireNonNull(cutIn, "cutIn");
    Objects.requireNonNull(cutOut, "cutOut");
    if (!(cutIn.pascals() > 0.0 && cutOut.compareTo(cutIn) > 0)) {
      throw new IllegalArgumentException("cut-in must be above 0 Pa(g) and below cut-out, was "
          + cutIn.inFewestDigits() + " with a cut-out of " + cutOut.inFewestDigits());
    }
  }

  /** {@return how far the two lie apart} */
  public PressureDrop width() {
    return PressureDrop.ofPascals(cutOut.pascals() - cutIn.pascals());
  }

  /**
   * Moves both pressures by as much.
   *
   * @param pascals by how much [Pa], below 0 for a lower band
   * @return the band moved
   * @throws IllegalArgumentException if its cut-in would not be above 0, or {@code pascals} is not finite
   */
  public PressureBand moved(double pascals) {
    return new PressureBand(
        GaugePressure.ofPascals(cutIn.pascals() + pascals),
        GaugePressure.ofPascals(cutOut.pascals() + pascals));
  }
}
