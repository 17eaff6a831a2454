package org.airfit.flow;

import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.airfit.source.Basis;
import org.airfit.source.Source;

/** What a rating comes to. */
record RatingFigures(
    RatingKind kind, CapacityRange capacity, List<Source> assumptions, OptionalDouble residual) {

  RatingFigures {
    assumptions = List.copyOf(assumptions);
    if (!assumptions.isEmpty()) {
      capacity = new CapacityRange(capacity.least(), capacity.most(), together(assumptions));
    }
  }

  private static Source together(List<Source> assumptions) {
    Basis weakest =
        assumptions.stream().map(Source::basis).reduce(Basis.STANDARD, Basis::weaker);
    return new Source(
        weakest, assumptions.stream().map(Source::citation).collect(Collectors.joining("; ")));
  }
}
