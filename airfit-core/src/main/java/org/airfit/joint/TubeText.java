package org.airfit.joint;

import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;

/** Outside diameters of tubes as the trade names them. */
final class TubeText {

  private TubeText() {}

  /** Thirty-seconds of an inch where the diameter is just that, else its shortest text; what it gives reads back. */
  static String of(Length outside) {
    long count = Math.round(outside.inches() * 32.0);
    if (!Length.ofInches(count / 32.0).equals(outside)) {
      return outside.label(LengthUnit.MILLIMETRE);
    }
    long over = 32;
    while (count % 2 == 0 && over > 1) {
      count /= 2;
      over /= 2;
    }
    long whole = count / over;
    String fraction = count % over + "/" + over;
    return over == 1 ? whole + " in" : (whole == 0 ? "" : whole + "-") + fraction + " in";
  }

  /** The unit in which the trade names a tube of that outside. */
  static LengthUnit unit(Length outside) {
    return of(outside).endsWith("mm") ? LengthUnit.MILLIMETRE : LengthUnit.INCH;
  }
}
