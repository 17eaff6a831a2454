package org.airfit.select;

import java.util.Optional;
import org.airfit.flow.CapacityRange;
import org.airfit.line.ConduitRange;

/** A part with the best figure of its air that is open. */
final class PartFigures {

  private PartFigures() {}

  /** The same part, letting through the most of what is open; empty where nothing is open. */
  static Optional<Part> atBest(Part part) {
    if (part instanceof Part.Socket socket && !socket.capacityRange().isExact()) {
      return Optional.of(new Part.Socket(
          socket.facts(), socket.profiles(), socket.end(), best(socket.capacityRange())));
    }
    if (part instanceof Part.Hose hose && !hose.conduitRange().isExact()) {
      return Optional.of(new Part.Hose(
          hose.facts(),
          hose.bore(),
          ConduitRange.exactly(hose.conduitRange().most()),
          hose.upstream(),
          hose.downstream()));
    }
    if (part instanceof Part.Device device && !device.capacityRange().isExact()) {
      return Optional.of(new Part.Device(
          device.facts(),
          device.kind(),
          best(device.capacityRange()),
          device.upstream(),
          device.downstream()));
    }
    if (part instanceof Part.Splitter splitter && !splitter.capacityRange().isExact()) {
      return Optional.of(new Part.Splitter(
          splitter.facts(),
          best(splitter.capacityRange()),
          splitter.upstream(),
          splitter.outlets()));
    }
    return Optional.empty();
  }

  private static CapacityRange best(CapacityRange range) {
    return CapacityRange.exactly(range.most());
  }
}
