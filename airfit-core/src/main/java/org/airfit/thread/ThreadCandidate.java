package org.airfit.thread;

import java.util.Objects;

/**
 * One thread that readings may mean.
 *
 * @param thread the thread
 * @param probability its chance [-], in [0, 1]
 */
public record ThreadCandidate(ThreadDesignation thread, double probability) {

  /**
   * Checks the chance.
   *
   * @param thread the thread
   * @param probability its chance [-], in [0, 1]
   * @throws IllegalArgumentException if {@code probability} is out of range
   */
  public ThreadCandidate {
    Objects.requireNonNull(thread, "thread");
    if (!(probability >= 0.0 && probability <= 1.0)) {
      throw new IllegalArgumentException("probability must be in [0, 1], was " + probability);
    }
  }
}
