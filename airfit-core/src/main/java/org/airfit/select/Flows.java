package org.airfit.select;

import java.util.List;
import java.util.stream.Stream;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Range;

/** Sums of flows of air, counted at the reference of the first. */
final class Flows {

  private Flows() {}

  static FreeAirFlow sum(FreeAirFlow one, FreeAirFlow other) {
    return FreeAirFlow.from(
        MassFlow.ofKilogramsPerSecond(
            one.massFlow().kilogramsPerSecond() + other.massFlow().kilogramsPerSecond()),
        one.reference());
  }

  /** What others take behind the splitters among slots. */
  static Stream<Range<FreeAirFlow>> ofOthers(List<Slot> slots) {
    return slots.stream()
        .flatMap(slot ->
            slot instanceof Slot.Splitter splitter ? splitter.others().stream() : Stream.empty());
  }

  /** Between which flows the sum of some lies, one at least. */
  static Range<FreeAirFlow> sum(Stream<Range<FreeAirFlow>> flows) {
    return flows.reduce(Flows::sum).orElseThrow();
  }

  /** Between which flows the sum of two lies. */
  static Range<FreeAirFlow> sum(Range<FreeAirFlow> one, Range<FreeAirFlow> other) {
    return new Range<>(sum(one.least(), other.least()), sum(one.most(), other.most()));
  }
}
