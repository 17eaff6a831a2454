package org.airfit.thread;

import java.util.Objects;
import java.util.Optional;
import org.airfit.quantity.Length;
import org.airfit.quantity.NominalThreadSize;
import org.airfit.source.Source;

/**
 * Which pipe thread: its family, its nominal size, and whether it is cut outside or inside, such as 3/8 NPT male.
 *
 * @param family the family
 * @param size the nominal size
 * @param gender outside or inside
 */
public record ThreadDesignation(ThreadFamily family, NominalThreadSize size, Gender gender)
    implements NamedThread {

  /**
   * Checks that the standard has such a thread.
   *
   * @param family the family
   * @param size the nominal size
   * @param gender outside or inside
   * @throws IllegalArgumentException if the family has no such size, or is only female and {@code gender} is male
   */
  public ThreadDesignation {
    Objects.requireNonNull(family, "family");
    family.requireSize(size);
    family.requireGender(gender);
  }

  /** {@return the geometry, empty for the dryseal families, whose tables were not seen} */
  public Optional<PipeThread> geometry() {
    return PipeThreads.of(family, size);
  }

  /** {@return the threads per inch; the dryseal families have those of NPT} */
  @Override
  public double threadsPerInch() {
    return PipeThreads.threadsPerInch(family, size);
  }

  /** {@return one inch over the threads per inch} */
  @Override
  public Length pitch() {
    return Length.ofInches(1.0 / threadsPerInch());
  }

  @Override
  public int flankAngleDegrees() {
    return family.flankAngleDegrees();
  }

  @Override
  public boolean isTapered() {
    return family.isTapered();
  }

  @Override
  public Source source() {
    return family.source();
  }

  /** {@return the thread as people write it: an American one size first, a 55° one letters first} */
  @Override
  public String label() {
    String symbol = family.symbol(gender);
    return family.form() == ThreadForm.FLAT_60
        ? size + " " + symbol + " " + gender.label()
        : symbol + " " + size + " " + gender.label();
  }

  /** {@return the {@link #label()}, such as "3/8 NPT male" or "Rc 1/4 female"} */
  @Override
  public String toString() {
    return label();
  }
}
