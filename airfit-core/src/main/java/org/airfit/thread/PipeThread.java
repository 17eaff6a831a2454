package org.airfit.thread;

import org.airfit.quantity.Length;
import org.airfit.quantity.NominalThreadSize;
import org.airfit.source.Source;
import org.airfit.working.UnitSystem;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/**
 * The geometry of a pipe thread of one family and size, from the formulas of its standard.
 *
 * <p>What is common to all stands here; what a standard adds stands in the class of its family, under the standard's
 * own names.
 */
public sealed interface PipeThread extends Worked
    permits NptThread, NpscThread, NpsmThread, BsptThread, RpThread, BsppThread {

  /** {@return the family} */
  ThreadFamily family();

  /** {@return the size} */
  NominalThreadSize size();

  /** {@return n, threads per inch} */
  double threadsPerInch();

  /** {@return the pitch} */
  Length pitch();

  /** {@return the height of the thread} */
  Length height();

  /**
   * Obtains the three diameters in a plane, at basic size.
   *
   * @param gender the male or the female thread
   * @param depth how far the plane lies behind the small end of a male thread, or inside the mouth of a female one
   * @return the diameters there
   * @throws IllegalArgumentException if the standard has no thread of that gender, or the cone has closed before {@code
   *     depth}
   */
  ThreadSection section(Gender gender, Length depth);

  /**
   * Obtains what the crest of the first full thread may measure: the diameter over a male thread at its small end, the
   * bore of a female thread at its mouth.
   *
   * @param gender the male or the female thread
   * @return the least and the most, over the gauging tolerance and from full to most cut crests
   * @throws IllegalArgumentException if the standard has no thread of that gender
   */
  Limits firstCrest(Gender gender);

  /**
   * Obtains the tolerance that lets a piece be loose.
   *
   * @param gender the male or the female thread
   * @return by how much the standard lets the pitch diameter be smaller than basic on a male thread, larger on a female
   *     one
   * @throws IllegalArgumentException if the standard has no thread of that gender
   */
  Length looseness(Gender gender);

  /** {@return how much smaller (male) or wider (female) the standard lets cut crests be, on the diameter} */
  Length crestSlack();

  /** {@return the standard, and how well it was seen} */
  Source source();

  /**
   * Tells how the dimensions follow from what the standard tabulates.
   *
   * @param units the units to show numbers in
   */
  @Override
  Working working(UnitSystem units);
}
