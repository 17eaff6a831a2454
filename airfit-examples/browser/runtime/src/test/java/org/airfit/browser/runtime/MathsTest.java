package org.airfit.browser.runtime;

import static org.assertj.core.api.Assertions.assertThat;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;

/** What is rounded in a page is rounded as {@link Math} does. */
class MathsTest {

  private static final double[] CORNERS = {
    0.0,
    -0.0,
    0.5,
    -0.5,
    1.5,
    -1.5,
    2.5,
    -2.5,
    0.49999999999999994,
    -0.49999999999999994,
    1.0e15 + 0.5,
    0x1.0p52,
    0x1.0p52 - 0.5,
    0x1.0p53,
    -0x1.0p63,
    0x1.0p63,
    0x1.0p62,
    1.0e19,
    -1.0e19,
    Double.MIN_VALUE,
    -Double.MIN_VALUE,
    Double.MIN_NORMAL,
    Double.MAX_VALUE,
    -Double.MAX_VALUE,
    Double.NaN,
    Double.POSITIVE_INFINITY,
    Double.NEGATIVE_INFINITY,
    1.0,
    2.0,
    0x1.fffffffffffffp0,
    Math.PI
  };

  private static void assertSame(double x) {
    assertSame("rint", x, Maths.rint(x), Math.rint(x));
    assertThat(Maths.round(x)).as("round %s", x).isEqualTo(Math.round(x));
    assertSame("ulp", x, Maths.ulp(x), Math.ulp(x));
    assertSame("toRadians", x, Maths.toRadians(x), Math.toRadians(x));
    assertSame("toDegrees", x, Maths.toDegrees(x), Math.toDegrees(x));
  }

  /** By bits, so that -0.0 is not 0.0, and no number is no number. */
  private static void assertSame(String function, double x, double ours, double theirs) {
    assertThat(Double.doubleToLongBits(ours))
        .as("%s of %s: %s, not %s", function, x, ours, theirs)
        .isEqualTo(Double.doubleToLongBits(theirs));
  }

  @Test
  void corners_are_those_of_the_jvm() {
    for (double x : CORNERS) {
      assertSame(x);
    }
  }

  @Property
  void any_number_is_that_of_the_jvm(@ForAll long bits) {
    assertSame(Double.longBitsToDouble(bits));
  }

  @Property
  void halves_are_those_of_the_jvm(@ForAll int halves) {
    assertSame(0.5 * halves);
  }
}
