package org.airfit.flow;

import java.util.List;
import java.util.OptionalDouble;
import org.airfit.source.Source;

/** What a rating comes to. */
record RatingFigures(
    RatingKind kind, CapacityRange capacity, List<Source> assumptions, OptionalDouble residual) {

  RatingFigures {
    assumptions = List.copyOf(assumptions);
    if (!assumptions.isEmpty()) {
      capacity = new CapacityRange(capacity.least(), capacity.most(), Source.together(assumptions));
    }
  }
}
