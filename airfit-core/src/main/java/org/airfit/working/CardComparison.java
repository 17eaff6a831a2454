package org.airfit.working;

import java.util.Objects;
import org.airfit.internal.Digits;

/**
 * Whether a number of a pencil card lies between two limits of a table, rounded so that nobody is misled: the answer is
 * that of the exact numbers.
 *
 * <p>Only a {@link PencilCard.Builder} makes one. This class is immutable, thread-safe and value-based.
 */
public final class CardComparison {

  /** More decimals than any gauge shows. */
  private static final int MOST_DECIMALS = 7;

  private final String least;
  private final String most;
  private final boolean fits;
  private final boolean settled;

  private CardComparison(String least, String most, boolean fits, boolean settled) {
    this.least = least;
    this.most = most;
    this.fits = fits;
    this.settled = settled;
  }

  /** Takes as many decimals of the limits as settle the comparison, all numbers in the unit printed. */
  static CardComparison of(Interval onCard, double exact, double least, double most, int decimals) {
    boolean fits = exact >= least && exact <= most;
    for (int places = decimals; places <= MOST_DECIMALS; places++) {
      String low = Digits.fixed(least, places);
      String high = Digits.fixed(most, places);
      double from = Double.parseDouble(low);
      double to = Double.parseDouble(high);
      boolean inside = onCard.lo() >= from && onCard.hi() <= to;
      boolean outside = onCard.hi() < from || onCard.lo() > to;
      if (fits ? inside : outside) {
        return new CardComparison(read(low), read(high), fits, true);
      }
    }
    return new CardComparison(
        read(Digits.fixed(least, decimals)), read(Digits.fixed(most, decimals)), fits, false);
  }

  /** With a sign of minus as it is printed. */
  private static String read(String number) {
    return number.replace('-', '−');
  }

  /** {@return the lower limit as printed} */
  public String least() {
    return least;
  }

  /** {@return the upper limit as printed} */
  public String most() {
    return most;
  }

  /** {@return whether the exact number lies between the exact limits, or on one of them} */
  public boolean fits() {
    return fits;
  }

  /** {@return whether the numbers printed tell the same; if not, the reading lies on a limit} */
  public boolean isSettled() {
    return settled;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof CardComparison that
        && least.equals(that.least)
        && most.equals(that.most)
        && fits == that.fits
        && settled == that.settled;
  }

  @Override
  public int hashCode() {
    return Objects.hash(least, most, fits, settled);
  }

  /** {@return the limits and the answer, such as "13.27 to 13.75: fits"} */
  @Override
  public String toString() {
    return least + " to " + most + ": "
        + (settled ? fits ? "fits" : "does not fit" : "too near to a limit to tell by pencil");
  }
}
