package org.airfit.run;

import java.util.List;

/**
 * Readings with the place of each in the run, and what their gauges have in common.
 *
 * <p>Shown pressures are told from those that an explanation lets stand by a normal distribution with the covariance
 *
 * <pre>
 *   Σ = Γ + J Jᵀ
 * </pre>
 *
 * <p>Γ is that of the gauges, J has a column for each thing that is known roughly.
 */
final class GaugePlaces {

  private final List<GaugeReading> readings;
  private final int[] places;
  private final double[] gauges; // Γ

  /** The readings at places of a run, and perhaps one more that nobody read yet, last. */
  GaugePlaces(List<GaugeReading> readings, List<String> names) {
    this.readings = List.copyOf(readings);
    int n = readings.size();
    this.places = new int[n];
    this.gauges = new double[n * n];
    for (int i = 0; i < n; i++) {
      places[i] = names.indexOf(readings.get(i).place());
      for (int j = 0; j < n; j++) {
        gauges[i * n + j] = covariance(readings.get(i), readings.get(j), i == j);
      }
    }
  }

  static double covariance(GaugeReading one, GaugeReading other, boolean same) {
    double shared = one.gauge().equals(other.gauge())
        ? one.gauge().covariance(one.shown().pascals(), other.shown().pascals())
        : 0.0;
    return same ? shared + one.gauge().ownVariance() : shared;
  }

  List<GaugeReading> readings() {
    return readings;
  }

  int size() {
    return readings.size();
  }

  int place(int reading) {
    return places[reading];
  }

  ToolState state(int reading) {
    return readings.get(reading).state();
  }

  /** The covariance of two readings by their gauges alone [Pa²]. */
  double ofGauges(int one, int other) {
    return gauges[one * size() + other];
  }

  /** What was shown more than a row of a grid expects [Pa]. */
  double[] residuals(GaugeGrid grid, double[] row) {
    double[] residuals = new double[size()];
    for (int i = 0; i < residuals.length; i++) {
      residuals[i] = readings.get(i).shown().pascals() - row[grid.index(0, state(i), place(i))];
    }
    return residuals;
  }

  /**
   * The covariance at a row of a grid.
   *
   * @param wrong the name of a gauge that has one error more, the same in all its readings; blank for none
   */
  double[] covariance(GaugeGrid grid, double[] row, String wrong) {
    int n = size();
    double[] sum = gauges.clone();
    for (int i = 0; i < n; i++) {
      for (int j = 0; j <= i; j++) {
        double more = 0.0;
        for (int k = 1; k <= grid.shifts(); k++) {
          more += row[grid.index(k, state(i), place(i))] * row[grid.index(k, state(j), place(j))];
        }
        more += ofWrong(i, j, wrong);
        sum[i * n + j] += more;
        if (i != j) {
          sum[j * n + i] += more;
        }
      }
    }
    return sum;
  }

  /** The covariance of two readings by an error of a gauge that is wrong [Pa²]. */
  double ofWrong(int one, int other, String wrong) {
    PressureGauge gauge = readings.get(one).gauge();
    if (!gauge.name().equals(wrong) || !readings.get(other).gauge().name().equals(wrong)) {
      return 0.0;
    }
    double off = WRONG_SHARE * gauge.topOfScale().pascals();
    return off * off;
  }

  /** A gauge that is wrong is off by a tenth of its scale, as one standard deviation: our choice. */
  private static final double WRONG_SHARE = 0.1;
}
