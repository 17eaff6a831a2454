package org.airfit.run;

import java.util.Objects;
import org.airfit.internal.Digits;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.PressureUnit;

/**
 * What a gauge showed at a place of a run.
 *
 * @param gauge the gauge
 * @param place "supply", or the name of the element behind which the gauge is
 * @param state whether the tool ran
 * @param shown the pressure that it showed, from minus its limit of error to the top of its scale
 */
public record GaugeReading(
    PressureGauge gauge, String place, ToolState state, GaugePressure shown) {

  /** The place in front of the first element. */
  public static final String SUPPLY = "supply";

  /**
   * Checks the components.
   *
   * @param gauge the gauge
   * @param place "supply", or the name of the element behind which the gauge is
   * @param state whether the tool ran
   * @param shown the pressure that it showed, from minus its limit of error to the top of its scale
   * @throws IllegalArgumentException if the gauge cannot show that, or the place is blank
   */
  public GaugeReading {
    Objects.requireNonNull(gauge, "gauge");
    if (Objects.requireNonNull(place, "place").isBlank()) {
      throw new IllegalArgumentException(
          "place of a reading must be \"supply\" or the name of an element, was blank");
    }
    Objects.requireNonNull(state, "state");
    double pascals = Objects.requireNonNull(shown, "shown").pascals();
    if (!(pascals >= -gauge.limit().pascals() && pascals <= gauge.topOfScale().pascals())) {
      throw new IllegalArgumentException("reading of " + gauge.name() + " must be in ["
          + Digits.told(-gauge.limit().pascals()) + ", "
          + Digits.told(gauge.topOfScale().pascals())
          + "] Pa(g), was " + shown.shown() + "; look at its scale and its unit again");
    }
  }

  /** {@return the reading in one line, such as "gauge A behind hose, while it runs: 5.1 bar(g)"} */
  @Override
  public String toString() {
    return gauge.name() + " " + at(place) + ", " + state + ": " + shown.format(PressureUnit.BAR);
  }

  /** A place in words, such as "behind hose". */
  static String at(String place) {
    return place.equals(SUPPLY) ? "at the supply" : "behind " + place;
  }
}
