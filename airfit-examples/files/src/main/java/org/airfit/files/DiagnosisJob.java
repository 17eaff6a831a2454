package org.airfit.files;

import java.util.List;
import java.util.Objects;
import org.airfit.run.GaugeReading;
import org.airfit.run.GaugeTest;
import org.airfit.working.UnitSystem;

/**
 * A run with readings of its gauges, as a file tells it.
 *
 * @param title what is asked
 * @param customer whose run it is
 * @param test the run, its tool and what is suspected
 * @param readings what the gauges showed
 * @param units the units of its sheet
 */
public record DiagnosisJob(
    String title, String customer, GaugeTest test, List<GaugeReading> readings, UnitSystem units) {

  /**
   * Copies the list; refuses what is null.
   *
   * @param title what is asked
   * @param customer whose run it is
   * @param test the run, its tool and what is suspected
   * @param readings what the gauges showed
   * @param units the units of its sheet
   */
  public DiagnosisJob {
    Objects.requireNonNull(title, "title");
    Objects.requireNonNull(customer, "customer");
    Objects.requireNonNull(test, "test");
    readings = List.copyOf(Objects.requireNonNull(readings, "readings"));
    Objects.requireNonNull(units, "units");
  }
}
