package org.airfit.thread;

/** How firmly readings of a thread speak. */
public enum ThreadVerdict {
  /** One pipe thread has enough of the chance, its pitch is sure, and every reading fits it. */
  IDENTIFIED,
  /** The same of a thread that is no pipe thread: it makes no joint with an air part. */
  FOREIGN,
  /** Several threads, or none of these, share the chance, or the only one is not sure enough. */
  AMBIGUOUS,
  /** No known thread fits the readings as they were taken. */
  NO_MATCH
}
