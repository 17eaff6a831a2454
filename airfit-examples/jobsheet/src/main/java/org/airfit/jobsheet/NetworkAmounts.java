package org.airfit.jobsheet;

import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.PressureUnit;
import org.airfit.quantity.ReferenceState;
import org.airfit.quantity.Velocity;
import org.airfit.working.UnitSystem;

/** Amounts as the sheet of a network shows them, in its units; of pressures the other system stands in brackets. */
record NetworkAmounts(UnitSystem units) {

  String pressure(GaugePressure pressure) {
    return units.sayBoth(pressure);
  }

  String loss(PressureDrop loss) {
    return units.sayBoth(loss);
  }

  /** A mass of air as free air, at 20 °C, 1 bar and 65 % humidity, or at 60 °F and 14.7 psi, as "scfm" is typed. */
  String flow(MassFlow flow) {
    return units.say(
        FreeAirFlow.from(flow, units.either(ReferenceState.ANR, ReferenceState.SCFM_60F)));
  }

  /** An absolute pressure such as that of the atmosphere. */
  String absolute(AbsolutePressure pressure) {
    return units.either(
        pressure.format(PressureUnit.BAR, 3),
        pressure.format(PressureUnit.PSI, 1) + " (" + pressure.format(PressureUnit.BAR, 3) + ")");
  }

  /** A pressure that parts what is told from what is not, in words of both systems. */
  String threshold(PressureDrop pressure) {
    return units.either(
        pressure.format(PressureUnit.BAR),
        pressure.format(PressureUnit.PSI) + " (" + pressure.format(PressureUnit.BAR) + ")");
  }

  String velocity(Velocity velocity) {
    return units.say(velocity);
  }

  String bore(Length bore) {
    return units.either(bore.format(LengthUnit.MILLIMETRE, 1), bore.format(LengthUnit.INCH, 3));
  }

  /** The bore of a hose, by the name of its size where it has one. */
  String hose(Length bore) {
    return units.sayBore(bore);
  }

  /** The number of an amount without its unit, for a column whose heading has the unit. */
  static String number(String amount) {
    return amount.replaceFirst(" .*", "");
  }
}
