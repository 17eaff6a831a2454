package org.airfit.plug;

import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;

/**
 * How many known pieces it takes until the mean of a dimension is as sure as wanted.
 *
 * @param verdict what it comes to
 * @param dimension the dimension
 * @param wanted the error wanted, either way
 * @param present the error there is with the pieces measured so far
 * @param measured how many those are
 * @param needed how many it takes in all, as the pieces so far scatter; 0 if no number does
 */
public record SampleSize(
    Verdict verdict, Dimension dimension, Length wanted, Length present, int measured, int needed) {

  /** What it comes to. */
  public enum Verdict {
    /** The pieces measured so far are enough. */
    ENOUGH,
    /** More pieces must be measured. */
    MEASURE_MORE,
    /** The caliper itself may be off by more than that, and no number of pieces helps. */
    CALIPER_TOO_COARSE
  }

  /** {@return what to do, in plain words} */
  public String inWords() {
    String aim = "The mean " + dimension.label() + " is known to ± "
        + present.format(LengthUnit.MILLIMETRE, 3) + " from " + measured + " pieces";
    String goal = "± " + wanted.format(LengthUnit.MILLIMETRE, 3);
    return switch (verdict) {
      case ENOUGH -> aim + ", which is within the " + goal + " wanted.";
      case MEASURE_MORE ->
        aim + ". For " + goal + " measure " + (needed - measured) + " more, " + needed
            + " in all, if they scatter alike.";
      case CALIPER_TOO_COARSE ->
        aim + ". For " + goal
            + " no number of pieces is enough: the caliper's own error is common to all of them. Use a finer instrument.";
    };
  }
}
