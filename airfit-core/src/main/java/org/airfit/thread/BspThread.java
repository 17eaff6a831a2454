package org.airfit.thread;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.airfit.internal.Digits;
import org.airfit.quantity.Length;
import org.airfit.quantity.NominalThreadSize;

/**
 * The basic geometry of the 55° pipe threads: G of ISO 228-1 and R of ISO 7-1, which share diameters at the gauge plane.
 *
 * <pre>
 *   P = 25.4/n, rounded to 0.001 mm    h = 0.640327 P, rounded to 0.001 mm
 *   d2 = d − h    d1 = d − 2h    R at its small end: all diameters less a/16
 * </pre>
 *
 * <p>d is the major diameter, d2 the pitch diameter, d1 the minor diameter (all at the gauge plane of R, everywhere on G), n the threads
 * per inch, a the distance of the gauge plane from the small end of R, f the thread beyond the gauge plane. <b>Valid</b> for sizes 1/16 to
 * 2. <b>Source:</b> ISO 228-1:2003 and ISO 7-1, as quoted in other documents.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class BspThread {

  /** n [1/in], d [mm], a [mm], f [mm], tolerance of the male major diameter of G downward [mm]. */
  private record Inputs(int n, double d, double a, double f, double td) {}

  private static final Map<NominalThreadSize, Inputs> TABLE = new EnumMap<>(Map.of(
      NominalThreadSize.ONE_SIXTEENTH, new Inputs(28, 7.723, 4.0, 2.5, 0.214),
      NominalThreadSize.ONE_EIGHTH, new Inputs(28, 9.728, 4.0, 2.5, 0.214),
      NominalThreadSize.ONE_QUARTER, new Inputs(19, 13.157, 6.0, 3.7, 0.250),
      NominalThreadSize.THREE_EIGHTHS, new Inputs(19, 16.662, 6.4, 3.7, 0.250),
      NominalThreadSize.ONE_HALF, new Inputs(14, 20.955, 8.2, 5.0, 0.284),
      NominalThreadSize.THREE_QUARTERS, new Inputs(14, 26.441, 9.5, 5.0, 0.284),
      NominalThreadSize.ONE, new Inputs(11, 33.249, 10.4, 6.4, 0.360),
      NominalThreadSize.ONE_AND_A_QUARTER, new Inputs(11, 41.910, 12.7, 6.4, 0.360),
      NominalThreadSize.ONE_AND_A_HALF, new Inputs(11, 47.803, 12.7, 6.4, 0.360),
      NominalThreadSize.TWO, new Inputs(11, 59.614, 15.9, 7.5, 0.360)));

  private final NominalThreadSize size;
  private final Inputs in;

  private BspThread(NominalThreadSize size, Inputs in) {
    this.size = size;
    this.in = in;
  }

  /**
   * Obtains the thread of a size.
   *
   * @param size the size, from 1/16 to 2
   * @return the thread
   * @throws IllegalArgumentException if the size is larger than 2
   */
  public static BspThread of(NominalThreadSize size) {
    Inputs inputs = TABLE.get(Objects.requireNonNull(size));
    if (inputs == null) {
      throw new IllegalArgumentException(
          "R and G size must be one of " + TABLE.keySet() + ", was " + size);
    }
    return new BspThread(size, inputs);
  }

  /** {@return all sizes, smallest first} */
  public static List<BspThread> all() {
    return TABLE.keySet().stream().map(BspThread::of).toList();
  }

  /** {@return the size} */
  public NominalThreadSize size() {
    return size;
  }

  /** {@return n, threads per inch} */
  public double threadsPerInch() {
    return in.n;
  }

  private static double rounded(double millimetres) {
    return Math.rint(millimetres * 1000.0) / 1000.0;
  }

  private double p() {
    return rounded(25.4 / in.n);
  }

  private double h() {
    return rounded(0.640327 * p());
  }

  private static Length mm(double value) {
    return Length.ofMillimetres(value);
  }

  /** {@return P, the pitch, to 0.001 mm as the standards use it} */
  public Length pitch() {
    return mm(p());
  }

  /** {@return h, the height of the thread} */
  public Length height() {
    return mm(h());
  }

  /** {@return d, the major diameter of G, and of R at the gauge plane} */
  public Length majorDiameter() {
    return mm(in.d);
  }

  /** {@return the least major diameter ISO 228-1 allows on a male G} */
  public Length leastMajorDiameter() {
    return mm(in.d - in.td);
  }

  /** {@return d2, the pitch diameter of G, and of R at the gauge plane} */
  public Length pitchDiameter() {
    return mm(in.d - h());
  }

  /** {@return d1, the minor diameter of G, and of R at the gauge plane} */
  public Length minorDiameter() {
    return mm(in.d - 2.0 * h());
  }

  /** {@return a, the distance of the gauge plane of R from its small end} */
  public Length gaugeLength() {
    return mm(in.a);
  }

  /** {@return the useful length of R: the gauge length and the fitting allowance beyond it} */
  public Length usefulLength() {
    return mm(in.a + in.f);
  }

  /** {@return the major diameter of R at its small end, d − a/16} */
  public Length majorDiameterAtSmallEnd() {
    return mm(in.d - in.a / 16.0);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof BspThread that && size == that.size;
  }

  @Override
  public int hashCode() {
    return size.hashCode();
  }

  /** {@return the thread as it is called, such as "R/G 1/4-19"} */
  @Override
  public String toString() {
    return "R/G " + size + "-" + Digits.plain(in.n);
  }
}
