package org.airfit.measure;

import java.util.Objects;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;

/**
 * How many known parts it takes until the mean of a size is as sure as wanted.
 *
 * @param size which size, in words such as "tip diameter"
 * @param wanted the error wanted, either way, above 0
 * @param present the error there is with the parts measured so far
 * @param measured how many those are, 2 at least
 * @param needed how many it takes in all, as the parts so far scatter; 0 if no number does
 */
public record SampleSize(String size, Length wanted, Length present, int measured, int needed) {

  /**
   * Checks that the counts and the errors belong together.
   *
   * @param size which size, in words such as "tip diameter"
   * @param wanted the error wanted, either way, above 0
   * @param present the error there is with the parts measured so far
   * @param measured how many those are, 2 at least
   * @param needed how many it takes in all, as the parts so far scatter; 0 if no number does
   * @throws IllegalArgumentException if the error wanted is zero, fewer than 2 are measured, or {@code needed} does not
   *     suit the errors
   */
  public SampleSize {
    Objects.requireNonNull(size, "size");
    Objects.requireNonNull(wanted, "wanted");
    Objects.requireNonNull(present, "present");
    if (!(wanted.metres() > 0.0)) {
      throw new IllegalArgumentException(
          "wanted error must be above 0 mm, was " + wanted.inFull(LengthUnit.MILLIMETRE));
    }
    if (measured < 2) {
      throw new IllegalArgumentException(
          "pieces must be at least 2 to show a spread, was " + measured);
    }
    boolean enough = present.compareTo(wanted) <= 0;
    if (enough ? needed != measured : needed != 0 && needed <= measured) {
      throw new IllegalArgumentException("pieces needed must be "
          + (enough ? "those measured, " + measured : "0 or above those measured, " + measured)
          + ", was " + needed);
    }
  }

  /** {@return what it comes to} */
  public SampleSizeVerdict verdict() {
    if (present.compareTo(wanted) <= 0) {
      return SampleSizeVerdict.ENOUGH;
    }
    return needed == 0 ? SampleSizeVerdict.CALIPER_TOO_COARSE : SampleSizeVerdict.MEASURE_MORE;
  }

  /** {@return what to do, in plain words} */
  public String inWords() {
    String aim = "The mean " + size + " is known to ± " + present.format(LengthUnit.MILLIMETRE, 3)
        + " from " + measured + " pieces";
    String goal = "± " + wanted.format(LengthUnit.MILLIMETRE, 3);
    return switch (verdict()) {
      case ENOUGH -> aim + ", which is within the " + goal + " wanted.";
      case MEASURE_MORE ->
        aim + ". For " + goal + " measure " + (needed - measured) + " more, " + needed
            + " in all, if they scatter alike.";
      case CALIPER_TOO_COARSE ->
        aim + ". For " + goal
            + " no number of pieces is enough: the caliper's own error is common to all of them. Use a finer "
            + "instrument.";
    };
  }
}
