package org.airfit.select;

import org.airfit.flow.CapacityRange;
import org.airfit.flow.FlowCapacity;
import org.airfit.line.Conduit;
import org.airfit.quantity.FreeAirFlow;

/**
 * Whether one part leaves at least as much pressure behind it as another, whatever the flow and the pressure, at worst
 * and at best.
 */
final class Width {

  private Width() {}

  static boolean isAsWide(Part one, Part other) {
    if (one instanceof Part.Socket a && other instanceof Part.Socket b) {
      return isAsWide(a.capacityRange(), b.capacityRange());
    }
    if (one instanceof Part.Hose a && other instanceof Part.Hose b) {
      return isAsWide(a.conduitRange().least(), b.conduitRange().least())
          && isAsWide(a.conduitRange().most(), b.conduitRange().most());
    }
    if (one instanceof Part.Adapter a && other instanceof Part.Adapter b) {
      return isAsWide(a.conduit(), b.conduit());
    }
    if (one instanceof Part.Device a && other instanceof Part.Device b) {
      return isAsWide(a.capacityRange(), b.capacityRange());
    }
    if (one instanceof Part.Regulator a && other instanceof Part.Regulator b) {
      return isAsWide(a.capacityRange(), b.capacityRange()) && droopsNoMore(a, b);
    }
    if (one instanceof Part.Splitter a && other instanceof Part.Splitter b) {
      return isAsWide(a.capacityRange(), b.capacityRange());
    }
    return one instanceof Part.Plug && other instanceof Part.Plug;
  }

  /** At worst and at best; a droop at one flow is not weighed against one at whatever flow there is, nor are curves. */
  private static boolean droopsNoMore(Part.Regulator one, Part.Regulator other) {
    if (one.curve().isPresent() || other.curve().isPresent()) {
      return one.curve().equals(other.curve());
    }
    double a = one.atFlow().map(Width::perFlow).orElse(1.0);
    double b = other.atFlow().map(Width::perFlow).orElse(1.0);
    return one.atFlow().isPresent() == other.atFlow().isPresent()
        && one.droopRange().most().pascals() * a <= other.droopRange().most().pascals() * b
        && one.droopRange().least().pascals() * a <= other.droopRange().least().pascals() * b;
  }

  private static double perFlow(FreeAirFlow flow) {
    return 1.0 / flow.massFlow().kilogramsPerSecond();
  }

  private static boolean isAsWide(CapacityRange one, CapacityRange other) {
    return isAsWide(one.least(), other.least()) && isAsWide(one.most(), other.most());
  }

  /** More of C and of b and less cracking pressure leave more behind; the index is not weighed against them. */
  private static boolean isAsWide(FlowCapacity one, FlowCapacity other) {
    return one.subsonicIndex() == other.subsonicIndex()
        && one.conductance().compareTo(other.conductance()) >= 0
        && one.criticalPressureRatio() >= other.criticalPressureRatio()
        && one.crackingPressure().compareTo(other.crackingPressure()) <= 0;
  }

  /** A wider bore, less length, less roughness and less loss of fittings leave more behind. */
  private static boolean isAsWide(Conduit one, Conduit other) {
    return one.bore().compareTo(other.bore()) >= 0
        && one.length().compareTo(other.length()) <= 0
        && one.roughness().compareTo(other.roughness()) <= 0
        && one.fittingLoss() <= other.fittingLoss();
  }
}
