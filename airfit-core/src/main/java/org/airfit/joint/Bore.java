package org.airfit.joint;

import java.util.Objects;
import org.airfit.internal.Digits;
import org.airfit.quantity.LengthUnit;
import org.airfit.source.Source;
import org.airfit.thread.Limits;

/**
 * The clear bore through an end, as far as anything can be said of it without measuring: the smallest bore on the way
 * rules the flow, and the size of a thread does not tell it.
 *
 * @param limits the least and the most to be expected
 * @param assumption what was assumed
 * @param source where the numbers come from
 */
public record Bore(Limits limits, String assumption, Source source) {

  /**
   * Refuses {@code null}.
   *
   * @param limits the least and the most to be expected
   * @param assumption what was assumed
   * @param source where the numbers come from
   */
  public Bore {
    Objects.requireNonNull(limits, "limits");
    Objects.requireNonNull(assumption, "assumption");
    Objects.requireNonNull(source, "source");
  }

  /** {@return the bore in words, such as "13.87 to 15.8 mm if cut from schedule 80 to 40 pipe"} */
  @Override
  public String toString() {
    String least = limits.least().equals(limits.most())
        ? ""
        : Digits.significant(limits.least().millimetres(), 4) + " to ";
    return least + limits.most().format(LengthUnit.MILLIMETRE) + " " + assumption;
  }
}
