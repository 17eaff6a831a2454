package org.airfit.thread;

import java.util.Objects;
import java.util.Optional;
import org.airfit.quantity.NominalThreadSize;

/** Finds the geometry of a pipe thread by its family and size. */
public final class PipeThreads {

  private PipeThreads() {}

  /**
   * Obtains the geometry of a thread.
   *
   * @param family the family
   * @param size the size, one of {@link ThreadFamily#sizes()}
   * @return the geometry, empty for the dryseal families, whose tables were not seen
   * @throws IllegalArgumentException if the family has no such size
   */
  public static Optional<PipeThread> of(ThreadFamily family, NominalThreadSize size) {
    Objects.requireNonNull(family, "family");
    family.requireSize(size);
    return switch (family) {
      case NPT -> Optional.of(NptThread.of(size));
      case NPSC -> Optional.of(NpscThread.of(size));
      case NPSM -> Optional.of(NpsmThread.of(size));
      case NPTF, PTF_SAE_SHORT, NPSF, NPSI -> Optional.empty();
      case BSPT -> Optional.of(BsptThread.of(size));
      case RP -> Optional.of(RpThread.of(size));
      case BSPP -> Optional.of(BsppThread.of(size));
    };
  }

  /**
   * Obtains how many threads a standard cuts to the inch. All families of 60° have the threads per inch of NPT at the
   * same size, all of 55° those of G; for the dryseal families, whose tables were not seen, that is from memory of ASME
   * B1.20.3.
   *
   * @param family the family
   * @param size the size, one of {@link ThreadFamily#sizes()}
   * @return n [1/in]
   * @throws IllegalArgumentException if the family has no such size
   */
  public static double threadsPerInch(ThreadFamily family, NominalThreadSize size) {
    Objects.requireNonNull(family, "family");
    family.requireSize(size);
    PipeThread known =
        family.form() == ThreadForm.FLAT_60 ? NptThread.of(size) : BsppThread.of(size);
    return known.threadsPerInch();
  }
}
