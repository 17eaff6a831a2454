package org.airfit.jobsheet;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.PressureUnit;
import org.airfit.quantity.ReferenceState;
import org.airfit.quantity.VolumeFlowUnit;

/** Amounts as every sheet shows them, with the digits they are worth; what has no unit, and what is told in both. */
final class Amounts {

  private Amounts() {}

  /** In bar and in psi, because a counter has customers of both kinds. */
  static String pressure(GaugePressure pressure) {
    return pressure.format(PressureUnit.BAR, 2) + " (" + pressure.format(PressureUnit.PSI, 1) + ")";
  }

  /** With as many digits more as show that it is not the other. */
  static String pressure(GaugePressure pressure, GaugePressure other) {
    int more = 0;
    while (more < 7
        && !pressure.equals(other)
        && pressure
            .format(PressureUnit.BAR, 2 + more)
            .equals(other.format(PressureUnit.BAR, 2 + more))) {
      more++;
    }
    return pressure.format(PressureUnit.BAR, 2 + more) + " ("
        + pressure.format(PressureUnit.PSI, 1 + more) + ")";
  }

  static String loss(PressureDrop loss) {
    return loss.format(PressureUnit.BAR, 2) + " (" + loss.format(PressureUnit.PSI, 1) + ")";
  }

  static String flow(FreeAirFlow flow) {
    FreeAirFlow anr = flow.at(ReferenceState.ANR);
    return anr.format(VolumeFlowUnit.LITRE_PER_SECOND, 1) + " = "
        + flow.at(ReferenceState.SCFM_60F).format(VolumeFlowUnit.CUBIC_FOOT_PER_MINUTE, 1);
  }

  /** Never 0 % or 100 %: nothing is certain. */
  static String percent(double probability) {
    if (probability < 0.001) {
      return "< 0.1 %";
    }
    return probability > 0.999 ? "> 99.9 %" : fixed(100.0 * probability, 1) + " %";
  }

  /** The next power of ten above a number, such as 1e-12; 1e-15 for what is smaller, as a double has no more digits. */
  static String powerAbove(double value) {
    return "1e" + (int) Math.ceil(Math.log10(Math.max(value, 1.0e-15)));
  }

  static String share(double fraction) {
    return fixed(100.0 * fraction, 0) + " %";
  }

  /** A number with so many decimals, halves rounded to even as the library does. */
  static String fixed(double value, int decimals) {
    return new BigDecimal(value).setScale(decimals, RoundingMode.HALF_EVEN).toPlainString();
  }
}
