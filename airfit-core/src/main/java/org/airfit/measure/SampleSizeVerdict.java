package org.airfit.measure;

/** Whether the parts measured so far are enough, see {@link SampleSize}. */
public enum SampleSizeVerdict {
  /** The parts measured so far are enough. */
  ENOUGH,
  /** More parts must be measured. */
  MEASURE_MORE,
  /** The caliper itself may be off by more than that, and no number of parts helps. */
  CALIPER_TOO_COARSE
}
