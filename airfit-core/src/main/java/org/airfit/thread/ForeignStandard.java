package org.airfit.thread;

import org.airfit.source.Source;

/** The standards of threads that are met beside pipe threads and are none, or none that air parts have. */
public enum ForeignStandard {
  /** Metric screw threads, 60°, class 6g outside and 6H inside. */
  METRIC(
      "a metric thread, not a pipe thread",
      60,
      Source.standard("ISO 68-1, ISO 724 and ISO 965-1, as quoted in a public data file")),
  /** Unified screw threads, 60°, class 2A outside and 2B inside. */
  UNIFIED(
      "a unified thread of flares and ports, not a pipe thread",
      60,
      Source.standard("ASME B1.1, as quoted in a handbook and in public source files")),
  /** G threads of ISO 228-1 in sizes that air parts do not have. */
  PARALLEL_PIPE(
      "a parallel pipe thread of a size that air parts do not have",
      55,
      Source.standard("ISO 228-1:2003, as quoted in other documents")),
  /** American hose coupling threads, 60°. */
  HOSE(
      "a hose thread for water, not a pipe thread",
      60,
      Source.handbook(
          "Machinery's Handbook, 27th ed., pp. 1875-1876: hose coupling screw threads"));

  private final String label;
  private final int flankAngleDegrees;
  private final Source source;

  ForeignStandard(String label, int flankAngleDegrees, Source source) {
    this.label = label;
    this.flankAngleDegrees = flankAngleDegrees;
    this.source = source;
  }

  /** {@return what such a thread is, such as "a metric thread, not a pipe thread"} */
  public String label() {
    return label;
  }

  /** {@return the angle between the flanks [°]} */
  public int flankAngleDegrees() {
    return flankAngleDegrees;
  }

  /** {@return where the standard was seen} */
  public Source source() {
    return source;
  }
}
