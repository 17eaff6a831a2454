package org.airfit.line;

/** How a velocity stands to the rule for what the pipe does. */
public enum VelocityVerdict {
  /** At most what the rule allows. */
  WITHIN,
  /** Faster than the rule allows. */
  ABOVE
}
