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

  /** What was taken for what a part does not tell; empty where it tells all. */
  private static Optional<Source> assumption(Part part) {
    return part.line()
        .filter(line -> !line.isTold())
        .map(ConduitRange::assumption)
        .or(() ->
            part.passage().filter(passage -> !passage.isTold()).map(CapacityRange::assumption));
  }
}
