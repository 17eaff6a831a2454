package org.airfit.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.airfit.internal.Digits;
import org.airfit.quantity.Length;

/**
 * What a person with a caliper gets grossly wrong, beyond what an uncertainty covers.
 *
 * <p>A slip is named and told; no reading is ever corrected silently. How often each happens is <b>this project's
 * choice</b>: no published rate of misread calipers was found. Generic tables of human error have 0.001 to 0.01 per
 * act; one reading in a hundred is taken here to be a slip of some kind.
 */
public enum CaliperSlip {
  /** A reading in inches was typed as millimetres: 0.47 for 11.94 mm. */
  INCHES_TYPED("inches typed as millimetres", 0.002),
  /** A reading in millimetres was typed as inches, and became 25.4 times as long. */
  MILLIMETRES_TYPED("millimetres typed as inches", 0.0005),
  /** Two digits that stand side by side changed places: 12.67 mm for 16.27 mm. */
  DIGITS_EXCHANGED("two digits exchanged", 0.0025),
  /** The decimal point stands one place off, or two: 4.7 mm or 0.47 mm for 47 mm. */
  DECIMAL_POINT("a decimal slip", 0.0005),
  /** The caliper stood at another size of the same part. */
  OTHER_SIZE("another size was measured", 0.0025),
  /** Anything else: a wrong line of the vernier, a jaw on a burr, a chip between the jaws. */
  MISREAD("misread", 0.002);

  private static final double MM_PER_INCH = 25.4;

  private final String label;
  private final double chance;

  CaliperSlip(String label, double chance) {
    this.label = label;
    this.chance = chance;
  }

  /** {@return the slip in words, such as "two digits exchanged"} */
  public String label() {
    return label;
  }

  /** {@return how often a reading is such a slip; this project's choice, no source} */
  public double chance() {
    return chance;
  }

  /**
   * Obtains what the caliper may have shown, were a reading this slip.
   *
   * @param read what was typed, to a hundredth of a millimetre where digits were exchanged
   * @return the lengths that the slip turns into {@code read}, of at most 10 m as a {@link Reading} is; the reading
   *     itself where another size was measured, and none where it was just misread
   */
  public List<Length> meant(Length read) {
    Objects.requireNonNull(read, "read");
    return all(read).stream()
        .filter(length -> length.metres() <= Reading.LONGEST)
        .toList();
  }

  private List<Length> all(Length read) {
    return switch (this) {
      case INCHES_TYPED -> List.of(read.times(MM_PER_INCH));
      case MILLIMETRES_TYPED -> List.of(read.times(1.0 / MM_PER_INCH));
      case DIGITS_EXCHANGED -> exchanged(Digits.fixed(read.millimetres(), 2));
      case DECIMAL_POINT -> shifted(read);
      case OTHER_SIZE -> List.of(read);
      case MISREAD -> List.of();
    };
  }

  /**
   * By how much a length meant moves for one that was typed: the density of what was typed is that of what was meant
   * times this.
   *
   * @return 25.4 or its inverse where the unit slipped, else 1; where the decimal point slipped it is what was meant over
   *     what was typed, and 1 here
   */
  public double stretch() {
    return switch (this) {
      case INCHES_TYPED -> MM_PER_INCH;
      case MILLIMETRES_TYPED -> 1.0 / MM_PER_INCH;
      case DIGITS_EXCHANGED, DECIMAL_POINT, OTHER_SIZE, MISREAD -> 1.0;
    };
  }

  /** A reading of nothing is meant as nothing. */
  private static List<Length> shifted(Length read) {
    return read.metres() == 0.0
        ? List.of()
        : List.of(read.times(10.0), read.times(100.0), read.times(0.1), read.times(0.01));
  }

  private static List<Length> exchanged(String typed) {
    List<Length> meant = new ArrayList<>();
    String digits = typed.replace(".", "");
    for (int i = 1; i < digits.length(); i++) {
      if (digits.charAt(i) != digits.charAt(i - 1)) {
        double hundredths = Double.parseDouble(digits.substring(0, i - 1)
            + digits.charAt(i)
            + digits.charAt(i - 1)
            + digits.substring(i + 1));
        if (hundredths > 0.0) {
          meant.add(Length.ofMillimetres(hundredths / 100.0));
        }
      }
    }
    return List.copyOf(meant);
  }

  /** {@return the slip in words} */
  @Override
  public String toString() {
    return label;
  }
}
