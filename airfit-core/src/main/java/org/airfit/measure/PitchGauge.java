package org.airfit.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;

/**
 * A thread pitch gauge: a set of toothed leaves, one of which is taken to fit a thread.
 *
 * <pre>
 *   F_i = e^(−½ ((p_i/p − 1)/0.012)²) / (Σ F + 0.0001)          which leaf a careful person takes
 *   chance of i = (1 − m) F_i + m Σ_k F_k N_ik                   N: 0.4 one leaf off, 0.1 two leaves off, either way
 * </pre>
 *
 * <table class="striped">
 * <caption>Symbols</caption>
 * <thead><tr><th>symbol</th><th>meaning</th><th>unit</th></tr></thead>
 * <tbody>
 * <tr><td>p, p_i</td><td>pitch of the thread, of a leaf</td><td>mm</td></tr>
 * <tr><td>m</td><td>share of readings that are of a leaf nearby</td><td>-</td></tr>
 * </tbody>
 * </table>
 *
 * <p>No source gives a rate of misread leaves; {@link #USUAL_MISREAD} and the numbers above are choices of this
 * project. The leaves are those of the sets the trade sells, from memory. A leaf that was read and is not among them is
 * taken to belong to the set.
 */
public enum PitchGauge {
  /** Leaves marked in threads per inch, those of the 55° and of the 60° sets together. */
  INCH(perInch(
      80, 72, 64, 60, 56, 48, 42, 40, 36, 32, 30, 28, 27, 26, 25, 24, 22, 20, 19, 18, 16, 14, 13,
      12, 11.5, 11, 10, 9, 8, 7, 6, 5.5, 5, 4.5, 4)),
  /** Leaves marked with the pitch in millimetres. */
  METRIC(
      0.25, 0.3, 0.35, 0.4, 0.45, 0.5, 0.6, 0.7, 0.75, 0.8, 0.9, 1.0, 1.25, 1.5, 1.75, 2.0, 2.5,
      3.0, 3.5, 4.0, 4.5, 5.0, 5.5, 6.0);

  /** The share of leaves that are misread unless told otherwise [-]: a choice of this project, no source gives one. */
  public static final double USUAL_MISREAD = 0.03;

  /** How far a leaf may be off a pitch and still seem to fit: one standard deviation of its share of the pitch. */
  private static final double FIT = 0.012;

  /** A leaf that does not fit is seldom reported at all. */
  private static final double NOT_REPORTED = 1.0e-4;

  private static final double ONE_OFF = 0.4;
  private static final double TWO_OFF = 0.1;

  private final double[] pitches;

  PitchGauge(double... pitches) {
    this.pitches = pitches;
  }

  private static double[] perInch(double... threadsPerInch) {
    double[] pitches = new double[threadsPerInch.length];
    for (int i = 0; i < pitches.length; i++) {
      pitches[i] = 25.4 / threadsPerInch[i];
    }
    return pitches;
  }

  /** {@return the pitches of the leaves, the finest first} */
  public List<Length> leaves() {
    List<Length> leaves = new ArrayList<>();
    for (double pitch : pitches) {
      leaves.add(Length.ofMillimetres(pitch));
    }
    return List.copyOf(leaves);
  }

  /**
   * Obtains how often a leaf is read on a thread of a known pitch.
   *
   * @param leaf the pitch on the leaf that was read, above 0
   * @param pitch the pitch of the thread, above 0
   * @param misread the share of readings that are of a leaf nearby, in [0, 0.5]
   * @return the chance [-]
   * @throws IllegalArgumentException if a length is 0 or {@code misread} is out of range
   */
  public double chance(Length leaf, Length pitch, double misread) {
    requirePositive("pitch on the leaf", Objects.requireNonNull(leaf, "leaf"));
    requirePositive("pitch of the thread", Objects.requireNonNull(pitch, "pitch"));
    requireMisread(misread);
    return chanceMm(leaf.millimetres(), pitch.millimetres(), misread);
  }

  private static void requirePositive(String what, Length length) {
    if (!(length.metres() > 0.0)) {
      throw new IllegalArgumentException(
          what + " must be above 0 mm, was " + length.inFull(LengthUnit.MILLIMETRE));
    }
  }

  /**
   * Refuses a share of misread leaves that is none.
   *
   * @param misread the share [-]
   * @throws IllegalArgumentException if it is outside [0, 0.5]
   */
  public static void requireMisread(double misread) {
    if (!(misread >= 0.0 && misread <= 0.5)) {
      throw new IllegalArgumentException("share of misread leaves must be in [0, 0.5], was "
          + misread + "; " + USUAL_MISREAD + " is usual here");
    }
  }

  private double chanceMm(double leaf, double pitch, double misread) {
    int read = indexOf(leaf);
    double fitsRead = 0.0;
    double nearby = 0.0;
    double sum = NOT_REPORTED;
    int last = read < 0 ? pitches.length : pitches.length - 1;
    int place = read < 0 ? -read - 1 : read;
    for (int i = 0; i <= last; i++) {
      double z = (leafAt(i, read, place, leaf) / pitch - 1.0) / FIT;
      double fits = Math.exp(-0.5 * z * z);
      int off = Math.abs(i - place);
      sum += fits;
      fitsRead += off == 0 ? fits : 0.0;
      nearby += off == 1 ? ONE_OFF * fits : off == 2 ? TWO_OFF * fits : 0.0;
    }
    return ((1.0 - misread) * fitsRead + misread * nearby) / sum;
  }

  /** The leaves, with the one read put in its place where the set has none like it. */
  private double leafAt(int i, int read, int place, double leaf) {
    if (read >= 0 || i < place) {
      return pitches[i];
    }
    return i == place ? leaf : pitches[i - 1];
  }

  /** The place of a leaf, or minus one minus the place where it would stand. */
  private int indexOf(double leaf) {
    for (int i = 0; i < pitches.length; i++) {
      if (Math.abs(pitches[i] / leaf - 1.0) < 1.0e-3) {
        return i;
      }
      if (pitches[i] > leaf) {
        return -i - 1;
      }
    }
    return -pitches.length - 1;
  }
}
