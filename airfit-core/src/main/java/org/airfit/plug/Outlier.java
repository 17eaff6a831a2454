package org.airfit.plug;

import java.util.Objects;
import org.airfit.internal.Digits;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;

/**
 * A piece that lies too far from the others of its record to be one of them.
 *
 * @param piece the piece
 * @param dimension where it differs
 * @param g how far it lies from the mean, in standard deviations of the record: Grubbs' G
 * @param critical what G exceeds for one record in twenty that has no outlier
 */
public record Outlier(KnownPiece piece, Dimension dimension, double g, double critical) {
  /**
   * Checks that nothing is missing.
   *
   * @param piece the piece
   * @param dimension where it differs
   * @param g how far it lies from the mean, in standard deviations of the record: Grubbs' G
   * @param critical what G exceeds for one record in twenty that has no outlier
   */
  public Outlier {
    Objects.requireNonNull(piece, "piece");
    Objects.requireNonNull(dimension, "dimension");
  }

  /** {@return the size that differs} */
  public Length length() {
    return java.util.Objects.requireNonNull(piece.sizes().get(dimension));
  }

  /** {@return what to do about it, in plain words} */
  public String inWords() {
    return "Piece " + piece.label() + " stands out: its " + dimension + " is "
        + length().format(LengthUnit.MILLIMETRE, 2) + ", G = " + Digits.fixed(g, 2) + " where "
        + Digits.fixed(critical, 2)
        + " is the limit. Measure it again. If it stays so, find out why before it is left out: "
        + "it may be worn, or of another profile.";
  }
}
