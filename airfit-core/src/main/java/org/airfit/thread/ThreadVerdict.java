package org.airfit.thread;

/** How firmly readings of a thread speak. */
public enum ThreadVerdict {
  /** One thread has 95 % of the chance or more. */
  IDENTIFIED,
  /** Several threads, or none of these, share the chance. */
  AMBIGUOUS,
  /** None of these has 95 % of the chance or more. */
  NO_MATCH
}
