package org.airfit.select;

import java.util.Optional;
import org.airfit.flow.CapacityRange;
import org.airfit.line.ConduitRange;

/** A part with other facts, or with the best figure of its air that is open. */
final class PartFigures {

  private PartFigures() {}

  /** The same part with other facts. */
  static Part with(Part part, PartFacts facts) {
    if (part instanceof Part.Socket socket) {
      return new Part.Socket(facts, socket.profiles(), socket.end(), socket.capacityRange());
    }
    if (part instanceof Part.Plug plug) {
      return new Part.Plug(facts, plug.profile(), plug.end());
    }
    if (part instanceof Part.Hose hose) {
      return new Part.Hose(
          facts, hose.bore(), hose.conduitRange(), hose.upstream(), hose.downstream());
    }
    if (part instanceof Part.Device device) {
      return new Part.Device(
          facts, device.kind(), device.capacityRange(), device.upstream(), device.downstream());
    }
    if (part instanceof Part.Regulator regulator) {
      return new Part.Regulator(
          facts, regulator.kind(), regulator.range(), regulator.upstream(), regulator.downstream());
    }
    if (part instanceof Part.Splitter splitter) {
      return new Part.Splitter(
          facts, splitter.capacityRange(), splitter.upstream(), splitter.outlets());
    }
    if (part instanceof Part.Pipe pipe) {
      return new Part.Pipe(facts, pipe.conduitRange(), pipe.upstream(), pipe.downstream());
    }
    Part.Adapter adapter = (Part.Adapter) part;
    return new Part.Adapter(facts, adapter.one(), adapter.other(), adapter.conduit());
  }

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
