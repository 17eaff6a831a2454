package org.airfit.joint;

/** What has to turn so that a joint closes, see {@link Mating#turning()}: it decides which joint is closed last. */
public enum Turning {
  /** Nothing: one part is pushed into or onto the other. */
  NOTHING("it is pushed together, nothing is turned"),
  /** The nut of one part, which turns freely: both parts stay as they are. */
  NUT("the nut or swivel is turned, both parts may stay as they are"),
  /** One half against the other by about an eighth of a turn. */
  EIGHTH("one half is turned about an eighth of a turn against the other"),
  /** One of the two parts with all that is fixed to it, several times round. */
  PART("one of the two parts is turned, with all that is fixed to it");

  private final String label;

  Turning(String label) {
    this.label = label;
  }

  /** {@return what is turned, in words} */
  public String label() {
    return label;
  }
}
