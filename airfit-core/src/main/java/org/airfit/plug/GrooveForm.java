package org.airfit.plug;

/**
 * How the locking groove looks in profile. A look decides it, and a worn groove may deceive; standards that fix a
 * groove by a gauge ball leave its form to the maker, so it is a {@link Clue} and no dimension.
 */
public enum GrooveForm {
  /** A flat root between two upright walls. */
  FLAT("flat"),
  /** A round root, as a ball would leave it. */
  ROUND("round"),
  /** Two sloped walls that meet. */
  VEE("V-shaped"),
  /** One upright wall, which carries the balls, and one sloped. */
  SLOPED("sloped at the rear");

  private final String label;

  GrooveForm(String label) {
    this.label = label;
  }

  /** {@return the form in words} */
  public String label() {
    return label;
  }
}
