package org.airfit.quantity;

/**
 * The bore by which a hose is named, such as '3/8 in' or '10 mm'.
 *
 * <p>A hose is named by its inside, a tube by its outside, a pipe by neither. The name is close to the bore but not equal to it:
 * ISO 1307 lets a hose named 10 mm measure 9.3 to 10.1 mm. It turns into no {@link NominalThreadSize} or {@link BasicBodySize}.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class HoseBore implements Comparable<HoseBore> {

  private final Length nominal;
  private final String label;

  private HoseBore(Length nominal, String label) {
    if (!(nominal.millimetres() >= 1.0 && nominal.millimetres() <= 500.0)) {
      throw new IllegalArgumentException(
          "hose bore must be in [1, 500] mm, was " + nominal.format(LengthUnit.MILLIMETRE));
    }
    this.nominal = nominal;
    this.label = label;
  }

  /**
   * Obtains a bore from a length.
   *
   * @param nominal the bore the hose is named by, in [1, 500] mm
   * @return the bore, labelled in millimetres
   * @throws IllegalArgumentException if {@code nominal} is out of range
   */
  public static HoseBore of(Length nominal) {
    return new HoseBore(nominal, nominal.format(LengthUnit.MILLIMETRE));
  }

  /**
   * Reads a bore as people write it.
   *
   * @param text a length with its unit, such as "3/8 in" or "10 mm"
   * @return the bore, labelled as it was typed
   * @throws QuantityFormatException if the text is not a length
   * @throws IllegalArgumentException if the length is out of range
   */
  public static HoseBore parse(String text) {
    return new HoseBore(Length.parse(text), text.strip().replaceAll("\\s+", " "));
  }

  /** {@return the length the hose is named by; the bore measured on a hose differs from it} */
  public Length nominal() {
    return nominal;
  }

  /** {@return the bore as it was given, such as "3/8 in"} */
  public String label() {
    return label;
  }

  @Override
  public int compareTo(HoseBore other) {
    return nominal.compareTo(other.nominal);
  }

  /** Equal bores are equal however they are written: '3/8 in' equals '9.525 mm'. */
  @Override
  public boolean equals(Object other) {
    return other instanceof HoseBore that && nominal.equals(that.nominal);
  }

  @Override
  public int hashCode() {
    return nominal.hashCode();
  }

  /** {@return the label with its kind, such as "3/8 in bore"} */
  @Override
  public String toString() {
    return label + " bore";
  }
}
