package org.airfit.thread;

import java.util.Objects;

/**
 * A thread that would fit the readings if one slip had been made.
 *
 * <p>Nobody but the identification makes one. This class is immutable, thread-safe and value-based.
 */
public final class SlipCandidate {

  private final ThreadSlip slip;
  private final NamedThread thread;

  SlipCandidate(ThreadSlip slip, NamedThread thread) {
    this.slip = Objects.requireNonNull(slip, "slip");
    this.thread = Objects.requireNonNull(thread, "thread");
  }

  /** {@return the slip} */
  public ThreadSlip slip() {
    return slip;
  }

  /** {@return the thread it would be then} */
  public NamedThread thread() {
    return thread;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof SlipCandidate that && slip == that.slip && thread.equals(that.thread);
  }

  @Override
  public int hashCode() {
    return Objects.hash(slip, thread);
  }

  /** {@return both in words, such as "1/4 NPT male if threads were counted as pitches"} */
  @Override
  public String toString() {
    return thread.label() + " if " + slip.label();
  }
}
