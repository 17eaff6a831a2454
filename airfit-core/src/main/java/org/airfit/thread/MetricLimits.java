package org.airfit.thread;

/**
 * Tolerances of ISO 965-1, grade 6, class 6g outside and 6H inside, for diameters above 2.8 and up to 45 mm.
 *
 * <pre>
 *   es = 15 + 11 P      Td = 180 P^(2/3) − 3.15/√P      Td2 = 90 P^0.4 g^0.1      TD2 = 1.32 Td2
 *   TD1 = 433 P − 190 P^1.22 below P = 1, else 230 P^0.7
 * </pre>
 *
 * <p>in µm, with P in mm and g the geometric mean of the range of diameters (2.8, 5.6, 11.2, 22.4, 45 mm); es to the
 * nearest whole number, the others to the nearest number of the series R40. The table of the standard has another value
 * than the formula in a few places, which are listed here. The formulas are from memory; they give every printed limit
 * they were held against.
 *
 * <p>Kernel: lengths in mm, tolerances in µm; no checks.
 */
final class MetricLimits {

  private static final double[] RANGES = {2.8, 5.6, 11.2, 22.4, 45.0};
  private static final double[] R40 = {
    1.00, 1.06, 1.12, 1.18, 1.25, 1.32, 1.40, 1.50, 1.60, 1.70, 1.80, 1.90, 2.00, 2.12, 2.24, 2.36,
    2.50, 2.65, 2.80, 3.00, 3.15, 3.35, 3.55, 3.75, 4.00, 4.25, 4.50, 4.75, 5.00, 5.30, 5.60, 6.00,
    6.30, 6.70, 7.10, 7.50, 8.00, 8.50, 9.00, 9.50, 10.0
  };

  private MetricLimits() {}

  private static int range(double diameter) {
    int i = 0;
    while (i < RANGES.length - 2 && diameter > RANGES[i + 1]) {
      i++;
    }
    return i;
  }

  /** The number of the series R40 whose ratio to {@code value} is nearest to one. */
  private static double r40(double value) {
    double scale = Math.pow(10.0, Math.floor(Math.log10(value)));
    double nearest = R40[0];
    for (double each : R40) {
      if (Math.abs(Math.log(each * scale / value)) < Math.abs(Math.log(nearest * scale / value))) {
        nearest = each;
      }
    }
    return nearest * scale;
  }

  /** es, the allowance of position g. */
  static double allowance(double pitch) {
    if (pitch == 1.25) {
      return 28.0;
    }
    return pitch == 3.5 ? 53.0 : Math.rint(15.0 + 11.0 * pitch);
  }

  /** Td, of the male major diameter. */
  static double maleMajor(double pitch) {
    return r40(180.0 * Math.pow(pitch, 2.0 / 3.0) - 3.15 / Math.sqrt(pitch));
  }

  private static double rawMalePitch(double diameter, double pitch) {
    int range = range(diameter);
    double mean = Math.sqrt(RANGES[range] * RANGES[range + 1]);
    return 90.0 * Math.pow(pitch, 0.4) * Math.pow(mean, 0.1);
  }

  /** Td2, of the male pitch diameter. */
  static double malePitch(double diameter, double pitch) {
    if (pitch == 0.5 && range(diameter) == 0) {
      return 75.0;
    }
    return r40(rawMalePitch(diameter, pitch));
  }

  /** TD2, of the female pitch diameter. */
  static double femalePitch(double diameter, double pitch) {
    int range = range(diameter);
    if (pitch == 0.5 && range == 0) {
      return 100.0;
    }
    if (pitch == 1.5 && range == 1) {
      return 180.0;
    }
    if (pitch == 1.5 && range == 2) {
      return 190.0;
    }
    if (pitch == 1.25 && range == 2) {
      return 180.0;
    }
    return r40(1.32 * rawMalePitch(diameter, pitch));
  }

  /** TD1, of the female minor diameter. */
  static double femaleMinor(double pitch) {
    if (pitch == 0.5) {
      return 140.0;
    }
    if (pitch == 2.5) {
      return 450.0;
    }
    return r40(
        pitch < 1.0 ? 433.0 * pitch - 190.0 * Math.pow(pitch, 1.22) : 230.0 * Math.pow(pitch, 0.7));
  }
}
