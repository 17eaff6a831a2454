package org.airfit.browser.runtime;

import org.teavm.jso.JSBody;

/**
 * What the compiler's class library rounds otherwise than {@link Math}: calls of airfit are led here.
 *
 * <p>Functions of analysis are those of the browser, which differ from the JVM's by a unit or two in the last place.
 */
final class Maths {

  /** From here on every double is a whole number. */
  private static final double WHOLE = 0x1.0p52;

  private static final double BEYOND_LONG = 0x1.0p63;

  private Maths() {}

  static double log1p(double x) {
    return nativeLog1p(x);
  }

  static double expm1(double x) {
    return nativeExpm1(x);
  }

  static double cbrt(double x) {
    return nativeCbrt(x);
  }

  static double log10(double x) {
    return nativeLog10(x);
  }

  static double hypot(double x, double y) {
    return nativeHypot(x, y);
  }

  static double toRadians(double degrees) {
    return degrees * 0.017453292519943295;
  }

  static double toDegrees(double radians) {
    return radians * 57.29577951308232;
  }

  /** The nearest whole number, halves to the even one. */
  static double rint(double x) {
    double size = Math.abs(x);
    if (!(size < WHOLE)) {
      return x;
    }
    double rounded = size + WHOLE - WHOLE;
    return x < 0.0 || 1.0 / x < 0.0 ? -rounded : rounded;
  }

  /** The nearest whole number, halves upwards. */
  static long round(double x) {
    double below = Math.floor(x);
    double nearest = x - below >= 0.5 ? below + 1.0 : below;
    if (nearest >= BEYOND_LONG) {
      return Long.MAX_VALUE;
    }
    return nearest <= -BEYOND_LONG ? Long.MIN_VALUE : Double.isNaN(nearest) ? 0L : (long) nearest;
  }

  /** The distance to the next double away from nought. */
  static double ulp(double x) {
    double size = Math.abs(x);
    if (!(size <= Double.MAX_VALUE)) {
      return size;
    }
    long bits = Double.doubleToLongBits(size);
    return bits == 0x7fefffffffffffffL ? 0x1.0p971 : Double.longBitsToDouble(bits + 1L) - size;
  }

  @JSBody(params = "x", script = "return Math.log1p(x);")
  private static native double nativeLog1p(double x);

  @JSBody(params = "x", script = "return Math.expm1(x);")
  private static native double nativeExpm1(double x);

  @JSBody(params = "x", script = "return Math.cbrt(x);")
  private static native double nativeCbrt(double x);

  @JSBody(params = "x", script = "return Math.log10(x);")
  private static native double nativeLog10(double x);

  @JSBody(
      params = {"x", "y"},
      script = "return Math.hypot(x, y);")
  private static native double nativeHypot(double x, double y);
}
