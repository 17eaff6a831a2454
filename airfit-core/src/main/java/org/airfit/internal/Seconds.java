package org.airfit.internal;

import java.time.Duration;

/** Times as numbers. */
public final class Seconds {

  private Seconds() {}

  /**
   * Obtains a time as a number.
   *
   * @param time the time
   * @return the time [s]
   */
  public static double of(Duration time) {
    return time.getSeconds() + 1.0e-9 * time.getNano();
  }

  /**
   * Tells a time that was refused.
   *
   * @param time the time
   * @return the seconds with their unit, such as "-1 s"
   */
  public static String told(Duration time) {
    return Digits.significant(of(time), 12) + " s";
  }
}
