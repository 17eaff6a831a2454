package org.airfit.joint;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import org.airfit.quantity.HoseBore;
import org.airfit.quantity.Length;
import org.airfit.working.UnitSystem;

/**
 * A size of air hose that a shop can be asked for: a proposal names one of these, never a bore between them.
 *
 * <p>In inches 1/4, 3/8, 1/2 and 3/4; in millimetres 6, 8, 10, 13 and 19. Which sizes shops keep is common practice, no
 * source. A calculation takes the bore that the name says; what the bore of a hose may measure is in
 * {@link StandardHose}.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class HoseSize {

  private static final List<HoseSize> INCHES = sizes("1/4 in", "3/8 in", "1/2 in", "3/4 in");
  private static final List<HoseSize> MILLIMETRES =
      sizes("6 mm", "8 mm", "10 mm", "13 mm", "19 mm");

  private final HoseBore name;

  private HoseSize(HoseBore name) {
    this.name = name;
  }

  private static List<HoseSize> sizes(String... names) {
    return Stream.of(names).map(name -> new HoseSize(HoseBore.parse(name))).toList();
  }

  /**
   * Obtains all sizes.
   *
   * @param units in millimetres, or in inches
   * @return the sizes, narrowest first
   */
  public static List<HoseSize> all(UnitSystem units) {
    return Objects.requireNonNull(units, "units").either(MILLIMETRES, INCHES);
  }

  /**
   * Obtains the sizes wider than a bore.
   *
   * @param bore the bore of today
   * @param units in millimetres, or in inches
   * @return the sizes more than half a millimetre wider, narrowest first: a 3/8 in hose is no change for one of 9.5 mm;
   *     that half millimetre is our choice
   */
  public static List<HoseSize> widerThan(Length bore, UnitSystem units) {
    Objects.requireNonNull(bore, "bore");
    return all(units).stream()
        .filter(size -> size.bore().millimetres() > bore.millimetres() + 0.5)
        .toList();
  }

  /**
   * Obtains the narrowest size that has at least a bore.
   *
   * @param bore the bore it must have, such as one found by calculation
   * @param units in millimetres, or in inches
   * @return the size; empty where hoses end before
   */
  public static Optional<HoseSize> atLeast(Length bore, UnitSystem units) {
    Objects.requireNonNull(bore, "bore");
    return all(units).stream().filter(size -> size.bore().compareTo(bore) >= 0).findFirst();
  }

  /** {@return the name, such as "3/8 in"} */
  public HoseBore name() {
    return name;
  }

  /** {@return the bore that the name says} */
  public Length bore() {
    return name.nominal();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof HoseSize that && name.equals(that.name);
  }

  @Override
  public int hashCode() {
    return name.hashCode();
  }

  /** {@return what to ask for, such as "3/8 in hose"} */
  @Override
  public String toString() {
    return name.label() + " hose";
  }
}
