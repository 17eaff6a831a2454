package org.airfit.measure;

import java.util.Objects;
import org.airfit.internal.Statistics;
import org.airfit.source.Source;

/**
 * Whether a reading shows a part to lie within limits, given what the reading may be off.
 *
 * <pre>
 *   p = Φ((b − y)/u) − Φ((a − y)/u)
 *   inside proven   a + U ≤ y ≤ b − U      outside proven   y ≤ a − U or y ≥ b + U      U = 2u
 * </pre>
 *
 * <p><b>Source:</b> JCGM 106:2012 clause 7 for the chance, ISO 14253-1 and ILAC-G8 for the guarded verdict.
 *
 * @param limits the limits a … b
 * @param reading the reading y with its standard uncertainty u
 */
public record Conformity(PartSpread.Limits limits, Reading reading) {

  /** Where the rule is from. */
  public static final Source RULE = Source.standard(
      "ISO 14253-1:2017 and ILAC-G8:09/2019, guard band U = 2u, as restated in secondary pages");

  /**
   * Takes down what is to be judged.
   *
   * @param limits the limits a … b
   * @param reading the reading y with its standard uncertainty u
   */
  public Conformity {
    Objects.requireNonNull(limits, "limits");
    Objects.requireNonNull(reading, "reading");
  }

  /**
   * Judges whether a reading shows a part to be within limits.
   *
   * @param limits the limits
   * @param reading the reading
   * @return the chance and the guarded verdict
   */
  public static Conformity of(PartSpread.Limits limits, Reading reading) {
    Objects.requireNonNull(limits, "limits");
    Objects.requireNonNull(reading, "reading");
    return new Conformity(limits, reading);
  }

  /** {@return the chance that the part lies within its limits} */
  public double probability() {
    double y = reading.length().millimetres();
    double u = reading.standardUncertainty().millimetres();
    double a = limits.low().millimetres();
    double b = limits.high().millimetres();
    return Statistics.normalBetween((a - y) / u, (b - y) / u);
  }

  /** {@return what the reading proves with an expanded uncertainty of two standard uncertainties} */
  public ConformityVerdict verdict() {
    double y = reading.length().millimetres();
    double a = limits.low().millimetres();
    double b = limits.high().millimetres();
    double guard = 2.0 * reading.standardUncertainty().millimetres();
    if (y >= a + guard && y <= b - guard) {
      return ConformityVerdict.INSIDE_PROVEN;
    }
    if (y <= a - guard || y >= b + guard) {
      return ConformityVerdict.OUTSIDE_PROVEN;
    }
    return y >= a && y <= b
        ? ConformityVerdict.INSIDE_NOT_PROVEN
        : ConformityVerdict.OUTSIDE_NOT_PROVEN;
  }
}
