package org.airfit.select;

import org.airfit.flow.CapacityRange;
import org.airfit.flow.FlowCapacity;
import org.airfit.line.Conduit;
import org.airfit.line.ConduitRange;
import org.airfit.plant.RegulatorRange;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Range;

/**
 * Which end is taken of all that is not known exactly. Whatever it is, at least as much pressure is left at the tool as
 * with all at its worst, and at most as much as with all at its best: an element leaves no less of more pressure, of
 * less flow, if it is wider or if it is set higher. That is why two ends are enough, and nothing between them need be
 * tried.
 */
enum Known {
  /** Every part lets least through, every regulator is set lowest and droops most, the tool takes most. */
  AT_WORST,
  /** Every part lets most through, every regulator is set highest and droops least, the tool takes least. */
  AT_BEST;

  FlowCapacity of(CapacityRange range) {
    return this == AT_WORST ? range.least() : range.most();
  }

  Conduit of(ConduitRange range) {
    return this == AT_WORST ? range.least() : range.most();
  }

  FreeAirFlow of(Range<FreeAirFlow> demand) {
    return this == AT_WORST ? demand.most() : demand.least();
  }

  /** What a regulator is set to: set higher, it leaves no less behind it. */
  GaugePressure ofSetting(Range<GaugePressure> set) {
    return this == AT_WORST ? set.least() : set.most();
  }

  /** By how much a regulator droops: less, and no less is left behind it. */
  PressureDrop ofDroop(Range<PressureDrop> droop) {
    return this == AT_WORST ? droop.most() : droop.least();
  }

  /** The same of a regulator that is set to something: behind the end of its curve it may hold nothing. */
  PressureDrop ofDroop(RegulatorRange regulator, GaugePressure set) {
    return this == AT_WORST ? regulator.mostDroop(set) : regulator.droop().least();
  }

  /** Whether a part is known exactly up to a flow, so that both ends are the same. */
  static boolean isExact(Part part, MassFlow most) {
    return part instanceof Part.Regulator regulator
        ? regulator.range().isExactUpTo(most)
        : isExact(part);
  }

  /** Whether a part is known exactly whatever flows, so that both ends are the same. */
  static boolean isExact(Part part) {
    return part instanceof Part.Regulator regulator
        ? regulator.range().isExact()
        : part.line().map(ConduitRange::isExact).orElse(true)
            && part.passage().map(CapacityRange::isExact).orElse(true);
  }
}
