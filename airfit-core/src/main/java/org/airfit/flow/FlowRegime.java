package org.airfit.flow;

/** How air passes a part. */
public enum FlowRegime {
  /** Nothing flows: there is no drop, or less than the cracking pressure. */
  CLOSED,
  /** The flow depends on the pressure behind the part. */
  SUBSONIC,
  /** The flow has reached the speed of sound somewhere inside; a lower pressure behind changes nothing. */
  CHOKED
}
