package org.airfit.quantity;

import java.util.EnumSet;
import java.util.List;
import java.util.Objects;

/**
 * The name of a pipe thread size, such as 3/8.
 *
 * <p>A name only: nothing on a 3/8 pipe thread measures 3/8 inch, and it says nothing of flow. It turns into no
 * {@link Length}, {@link BasicBodySize} or {@link HoseBore}; the geometry of a thread does the first.
 *
 * <p>The size of a thread is a name, not a length:
 *
 * <pre>{@code
 * import org.airfit.quantity.NominalThreadSize;
 *
 * class NameOfAThread {
 *   public static void main(String[] args) {
 *     NominalThreadSize size = NominalThreadSize.parse("1/4");
 *     System.out.println(size.label()); // 1/4
 *     System.out.println(size.stepsTo(NominalThreadSize.parse("1/2"))); // 2
 *   }
 * }
 * }</pre>
 */
public enum NominalThreadSize {
  /** 1/16. */
  ONE_SIXTEENTH("1/16"),
  /** 1/8. */
  ONE_EIGHTH("1/8"),
  /** 1/4. */
  ONE_QUARTER("1/4"),
  /** 3/8. */
  THREE_EIGHTHS("3/8"),
  /** 1/2. */
  ONE_HALF("1/2"),
  /** 3/4. */
  THREE_QUARTERS("3/4"),
  /** 1. */
  ONE("1"),
  /** 1-1/4. */
  ONE_AND_A_QUARTER("1-1/4"),
  /** 1-1/2. */
  ONE_AND_A_HALF("1-1/2"),
  /** 2. */
  TWO("2"),
  /** 2-1/2. */
  TWO_AND_A_HALF("2-1/2"),
  /** 3. */
  THREE("3"),
  /** 3-1/2. */
  THREE_AND_A_HALF("3-1/2"),
  /** 4. */
  FOUR("4");

  private static final SizeNames<NominalThreadSize> NAMES = new SizeNames<>(
      "nominal thread size", values(), NominalThreadSize::label, List.of("in", "inch", "\"", "''"));

  private final String label;

  NominalThreadSize(String label) {
    this.label = label;
  }

  /**
   * Reads a size as people write it.
   *
   * @param text a size, such as "3/8", "3/8 in", "1-1/4", "1 1/4" or "1¼"
   * @return the size
   * @throws QuantityFormatException if there is no such size; it lists those there are
   */
  public static NominalThreadSize parse(String text) {
    return NAMES.parse(text);
  }

  /**
   * {@return how many sizes lie between this and another, the other counted: 1 of two that follow one another, 0 of one}
   *
   * @param other the other size
   */
  public int stepsTo(NominalThreadSize other) {
    Objects.requireNonNull(other, "other");
    return compareTo(other) < 0
        ? EnumSet.range(this, other).size() - 1
        : EnumSet.range(other, this).size() - 1;
  }

  /** {@return the size as the trade writes it, such as "1-1/4"} */
  public String label() {
    return label;
  }

  @Override
  public String toString() {
    return label;
  }
}
