package org.airfit.plant;

/** What the walls of a receiver do to the air in it while the pressure changes. The truth lies between the two. */
public enum WallHeat {
  /** They keep the air at one temperature, as they nearly do where a change takes minutes. */
  KEEPS("one temperature"),
  /** They give and take none, as they nearly do where a change takes seconds: the pressure falls further. */
  NONE("no heat from the walls");

  private final String words;

  WallHeat(String words) {
    this.words = words;
  }

  /** {@return it in words, such as "one temperature"} */
  @Override
  public String toString() {
    return words;
  }
}
