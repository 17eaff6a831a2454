package org.airfit.thread;

/**
 * Tolerances of ASME B1.1, class 2A outside and 2B inside.
 *
 * <pre>
 *   Td2 = 0.0015 (D^(1/3) + √LE + 10 P^(2/3))      es = 0.3 Td2      Td = 0.06 P^(2/3)      TD2 = 1.3 Td2
 *   TD1 = 0.25 P − 0.4 P²     for D from 1/4 in and threads of 4 per inch or finer
 *   LE = D for the coarse and fine series, else 9 P
 * </pre>
 *
 * <p>Rounded as the standard rounds: to 0.0001 in, the female minor diameter to 0.001 in.
 *
 * <p>Kernel: all in inches; no checks.
 */
final class UnifiedLimits {

  private UnifiedLimits() {}

  static double toTenThousandth(double value) {
    return Math.floor(value * 1.0e4 + 0.5) / 1.0e4;
  }

  static double toThousandth(double value) {
    return Math.floor(value * 1.0e3 + 0.5) / 1.0e3;
  }

  private static double rawMalePitch(double diameter, double pitch, double engagement) {
    return 0.0015
        * (Math.cbrt(diameter) + Math.sqrt(engagement) + 10.0 * Math.pow(pitch, 2.0 / 3.0));
  }

  /** es, the allowance of class 2A. */
  static double allowance(double diameter, double pitch, double engagement) {
    return toTenThousandth(0.3 * rawMalePitch(diameter, pitch, engagement));
  }

  /** Td, of the male major diameter. */
  static double maleMajor(double pitch) {
    return toTenThousandth(0.06 * Math.pow(pitch, 2.0 / 3.0));
  }

  /** Td2, of the male pitch diameter. */
  static double malePitch(double diameter, double pitch, double engagement) {
    return toTenThousandth(rawMalePitch(diameter, pitch, engagement));
  }

  /** TD2, of the female pitch diameter. */
  static double femalePitch(double diameter, double pitch, double engagement) {
    return toTenThousandth(1.3 * rawMalePitch(diameter, pitch, engagement));
  }

  /** TD1, of the female minor diameter, not rounded. */
  static double femaleMinor(double pitch) {
    return 0.25 * pitch - 0.4 * pitch * pitch;
  }
}
