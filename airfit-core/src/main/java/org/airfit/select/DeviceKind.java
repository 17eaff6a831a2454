package org.airfit.select;

import org.airfit.internal.Labels;

/** What a part with two ends is that stands in the line. */
public enum DeviceKind {
  /** A filter. */
  FILTER,
  /** A lubricator. */
  LUBRICATOR,
  /** A valve that shuts the line. */
  SHUT_OFF_VALVE,
  /** A non-return valve. */
  NON_RETURN_VALVE,
  /** A hose fuse, that closes when a hose bursts. */
  HOSE_FUSE,
  /** A hose reel with its hose. */
  REEL,
  /** A swivel. */
  SWIVEL,
  /** Anything else that air goes through. */
  OTHER;

  /**
   * Reads a kind.
   *
   * @param text the kind in words, as {@link #toString} prints it
   * @return the kind
   * @throws IllegalArgumentException if {@code text} is no kind
   */
  public static DeviceKind parse(String text) {
    return Labels.parse("device", text, values());
  }

  /** {@return the kind in words, such as "shut off valve"} */
  @Override
  public String toString() {
    return Labels.of(this);
  }
}
