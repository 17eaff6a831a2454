package org.airfit.air;

import org.airfit.internal.Labels;

/** One of the classes of ISO 8573-1, of particles, of water or of oil; a lower one is purer. */
public enum PurityClass {
  /** As user and supplier agreed, stricter than class 1: no measurement gives it by itself. */
  CLASS_0("0"),
  /** Class 1. */
  CLASS_1("1"),
  /** Class 2. */
  CLASS_2("2"),
  /** Class 3. */
  CLASS_3("3"),
  /** Class 4; of oil the last that has a limit. */
  CLASS_4("4"),
  /** Class 5; of particles the last by counts. */
  CLASS_5("5"),
  /** Class 6; of water the last by dew point. */
  CLASS_6("6"),
  /** Class 7; of particles the last that has a limit. */
  CLASS_7("7"),
  /** Class 8, of water alone. */
  CLASS_8("8"),
  /** Class 9, of water alone. */
  CLASS_9("9"),
  /** Beyond the last limit. */
  CLASS_X("X"),
  /** Not specified: whatever it is. */
  NOT_SPECIFIED("-");

  private final String sign;

  PurityClass(String sign) {
    this.sign = sign;
  }

  /**
   * Reads a class.
   *
   * @param text the class, such as "4", "X" or "-"
   * @return the class
   * @throws IllegalArgumentException if it is none
   */
  public static PurityClass parse(String text) {
    return Labels.parse("class of purity", text, values());
  }

  /** Whether air of this class may be taken where another is asked for. */
  boolean meets(PurityClass asked) {
    return asked == NOT_SPECIFIED
        || (this != NOT_SPECIFIED && asked != CLASS_0 && compareTo(asked) <= 0);
  }

  /** {@return the class as a designation has it, such as "4", "X" or "-"} */
  @Override
  public String toString() {
    return sign;
  }
}
