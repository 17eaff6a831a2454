package org.airfit.run;

import org.airfit.internal.Digits;

/**
 * The reading that is expected to tell most, among those not taken yet.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class NextGaugeReading {

  private record Values(PressureGauge gauge, String place, ToolState state, double expected) {}

  private final Values values;

  private NextGaugeReading(Values values) {
    this.values = values;
  }

  static NextGaugeReading of(PressureGauge gauge, String place, ToolState state, double expected) {
    return new NextGaugeReading(new Values(gauge, place, state, expected));
  }

  /** {@return the gauge to read} */
  public PressureGauge gauge() {
    return values.gauge;
  }

  /** {@return where: "supply", or the element behind which to read} */
  public String place() {
    return values.place;
  }

  /** {@return whether the tool is to run} */
  public ToolState state() {
    return values.state;
  }

  /** {@return how probable the best explanation is expected to be with that reading [-], in (0, 1)} */
  public double expectedProbability() {
    return values.expected;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof NextGaugeReading that && values.equals(that.values);
  }

  @Override
  public int hashCode() {
    return values.hashCode();
  }

  /** {@return what to do, such as "Read gauge A behind coupling while it runs: … right in 93 of 100 such cases"} */
  @Override
  public String toString() {
    return "Read " + values.gauge.name() + " " + GaugeReading.at(values.place) + " "
        + values.state + ": the most probable explanation is then expected to be right in "
        + Digits.fixed(100.0 * Math.min(0.99, values.expected), 0) + " of 100 such cases.";
  }
}
