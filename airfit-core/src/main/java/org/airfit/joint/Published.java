package org.airfit.joint;

import java.util.Map;
import java.util.Objects;
import org.airfit.internal.Table;
import org.airfit.source.Basis;
import org.airfit.source.Source;

/** Where a row of this package's tables was published. */
final class Published {

  private static final Map<String, Basis> BASES = Map.of(
      "read", Basis.STANDARD, "memory", Basis.FROM_MEMORY, "practice", Basis.COMMON_PRACTICE);

  private Published() {}

  static Source source(Table.Row row) {
    return new Source(Objects.requireNonNull(BASES.get(row.text("basis"))), row.text("source"));
  }
}
