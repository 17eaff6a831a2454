package org.airfit.line;

import java.util.List;
import org.airfit.source.Source;
import org.airfit.thread.Limits;
import org.jspecify.annotations.Nullable;

/**
 * What the name of a conduit may mean.
 *
 * @param bore the bore, or null if no size was told
 * @param roughness the roughness
 * @param wall what it is of, or null if that was not told
 * @param assumptions what was taken, at least one
 */
record ConduitFacts(
    @Nullable Limits bore, Limits roughness, @Nullable Wall wall, List<Source> assumptions) {

  ConduitFacts {
    assumptions = List.copyOf(assumptions);
  }
}
