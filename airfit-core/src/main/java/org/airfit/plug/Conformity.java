package org.airfit.plug;

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
 * @param probability the chance that the part lies within its limits
 * @param verdict what the reading proves with an expanded uncertainty of two standard uncertainties
 */
public record Conformity(double probability, Verdict verdict) {

  /** Where the rule is from. */
  public static final Source RULE = Source.standard(
      "ISO 14253-1:2017 and ILAC-G8:09/2019, guard band U = 2u, as restated in secondary pages");

  /** What a reading proves. */
  public enum Verdict {
    /** Inside the limits by more than the uncertainty. */
    INSIDE_PROVEN("inside proven"),
    /** Reads inside, but the uncertainty reaches over a limit. */
    INSIDE_NOT_PROVEN("inside not proven"),
    /** Reads outside, but the uncertainty reaches back over the limit. */
    OUTSIDE_NOT_PROVEN("outside not proven"),
    /** Outside the limits by more than the uncertainty. */
    OUTSIDE_PROVEN("outside proven");

    private final String label;

    Verdict(String label) {
      this.label = label;
    }

    /** {@return the verdict in words} */
    public String label() {
      return label;
    }
  }

  static Conformity of(PartSpread.Limits limits, Reading reading) {
    double y = reading.length().millimetres();
    double u = reading.standardUncertainty().millimetres();
    double a = limits.low().millimetres();
    double b = limits.high().millimetres();
    double guard = 2.0 * u;
    Verdict verdict;
    if (y >= a + guard && y <= b - guard) {
      verdict = Verdict.INSIDE_PROVEN;
    } else if (y <= a - guard || y >= b + guard) {
      verdict = Verdict.OUTSIDE_PROVEN;
    } else {
      verdict = y >= a && y <= b ? Verdict.INSIDE_NOT_PROVEN : Verdict.OUTSIDE_NOT_PROVEN;
    }
    return new Conformity(Statistics.normalBetween((a - y) / u, (b - y) / u), verdict);
  }
}
