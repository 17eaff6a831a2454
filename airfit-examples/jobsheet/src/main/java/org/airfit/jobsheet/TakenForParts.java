package org.airfit.jobsheet;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.airfit.flow.CapacityRange;
import org.airfit.line.ConduitRange;
import org.airfit.select.Part;
import org.airfit.source.Source;

/** What was taken for what ratings and names of parts do not tell: b of a coupling, the wall of an old hose. */
final class TakenForParts {

  private TakenForParts() {}

  /** By the name of each part that the sheet shows, in the order the air goes; none of what was told in full. */
  static Map<String, String> of(JobSheet sheet) {
    Map<String, String> taken = new LinkedHashMap<>();
    sheet
        .selection()
        .flatMap(JobSheet::shown)
        .ifPresent(proposal -> proposal
            .parts()
            .forEach(part -> assumption(part)
                .ifPresent(source -> taken.putIfAbsent(part.name(), source.toString()))));
    return taken;
  }

  private static Optional<Source> assumption(Part part) {
    if (part instanceof Part.Socket socket) {
      return of(socket.capacityRange());
    }
    if (part instanceof Part.Device device) {
      return of(device.capacityRange());
    }
    if (part instanceof Part.Regulator regulator) {
      return of(regulator.capacityRange());
    }
    if (part instanceof Part.Splitter splitter) {
      return of(splitter.capacityRange());
    }
    if (part instanceof Part.Hose hose) {
      return of(hose.conduitRange());
    }
    return part instanceof Part.Pipe pipe ? of(pipe.conduitRange()) : Optional.empty();
  }

  private static Optional<Source> of(CapacityRange range) {
    return otherThan(CapacityRange.exactly(range.least()).assumption(), range.assumption());
  }

  private static Optional<Source> of(ConduitRange range) {
    return otherThan(ConduitRange.exactly(range.least()).assumption(), range.assumption());
  }

  /** Of what is told in full nothing was taken. */
  private static Optional<Source> otherThan(Source told, Source assumption) {
    return assumption.equals(told) ? Optional.empty() : Optional.of(assumption);
  }
}
