package org.airfit.thread;

import java.util.Objects;
import java.util.Optional;
import org.airfit.internal.Digits;

/**
 * One thread that readings may mean.
 *
 * <p>Nobody but the identification makes one. This class is immutable and thread-safe.
 */
public final class ThreadCandidate {

  private final NamedThread thread;
  private final double probability;

  /** Checks the chance [-], which must be in [0, 1]. */
  ThreadCandidate(NamedThread thread, double probability) {
    this.thread = Objects.requireNonNull(thread, "thread");
    if (!(probability >= 0.0 && probability <= 1.0)) {
      throw new IllegalArgumentException("probability must be in [0, 1], was " + probability);
    }
    this.probability = probability;
  }

  /** {@return the thread} */
  public NamedThread thread() {
    return thread;
  }

  /** {@return the thread, if it is a pipe thread; empty for a foreign one} */
  public Optional<ThreadDesignation> pipeThread() {
    return thread instanceof ThreadDesignation pipe ? Optional.of(pipe) : Optional.empty();
  }

  /** {@return its chance [-], in [0, 1]} */
  public double probability() {
    return probability;
  }

  /** {@return the chance in percent, such as "96.2 %", and never more than "> 99.9 %"} */
  public String percent() {
    return Digits.percent(probability);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof ThreadCandidate that
        && thread.equals(that.thread)
        && Double.compare(probability, that.probability) == 0;
  }

  @Override
  public int hashCode() {
    return Objects.hash(thread, probability);
  }

  /** {@return the thread and its chance, such as "1/4 NPT male, 96.2 %"} */
  @Override
  public String toString() {
    return thread.label() + ", " + percent();
  }
}
