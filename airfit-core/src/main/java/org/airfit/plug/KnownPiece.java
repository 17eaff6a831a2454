package org.airfit.plug;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;

/**
 * One plug of known profile, as it was measured: a row of the shop's own record.
 *
 * @param label what is written on the piece or its bag, unique in the record
 * @param sizes what it measures, each size once or the mean of its repeats
 */
public record KnownPiece(String label, Map<Dimension, Length> sizes) {

  /** Where the ranges of calipers end. */
  static final double MOST_MM = 600.0;

  /**
   * Keeps a copy of the sizes in the order of {@link Dimension}.
   *
   * @param label what is written on the piece or its bag, unique in the record
   * @param sizes what it measures, each size once or the mean of its repeats
   * @throws IllegalArgumentException if the label is blank, there is no size, or a size is outside (0, 600] mm, where
   *     calipers read
   */
  public KnownPiece {
    Objects.requireNonNull(label, "label");
    Objects.requireNonNull(sizes, "sizes");
    if (label.isBlank()) {
      throw new IllegalArgumentException("label of a piece must not be blank, was \"" + label
          + "\"; number the pieces, so that one can be found again");
    }
    if (sizes.isEmpty()) {
      throw new IllegalArgumentException(
          "sizes of piece " + label + " must be at least one, were none");
    }
    sizes.forEach((dimension, length) -> {
      if (!(length.metres() > 0.0)) {
        throw new IllegalArgumentException(
            dimension + " of piece " + label + " must be above 0 mm, was "
                + length.inFull(LengthUnit.MILLIMETRE) + "; leave out what was not measured");
      }
      if (!(length.millimetres() <= MOST_MM)) {
        throw new IllegalArgumentException(dimension + " of piece " + label
            + " must be in (0, 600] mm, where calipers read, was "
            + length.inFull(LengthUnit.MILLIMETRE) + "; check its unit");
      }
    });
    sizes = Collections.unmodifiableMap(new EnumMap<>(sizes));
  }
}
