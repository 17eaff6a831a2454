package org.airfit.joint;

import java.util.List;
import java.util.Optional;
import org.airfit.internal.Table;
import org.airfit.quantity.Length;
import org.airfit.source.Source;

/**
 * The passage behind a port, as a chart of its standard has it.
 *
 * @param thread the thread of the port by its name, such as "G 1/4"
 * @param bore the passage
 * @param source where it was read
 */
record PortPassage(String thread, Length bore, Source source) {

  /** Loaded on first use. */
  private static final class Loaded {
    static final List<PortPassage> ALL = read();
  }

  /** Reads the whole table, as is done once. */
  static List<PortPassage> read() {
    return Table.read(PortPassage.class, "port_passages.csv").stream()
        .map(row -> new PortPassage(
            row.text("thread"),
            Length.ofMillimetres(row.number("passage_mm")),
            Published.source(row)))
        .toList();
  }

  /** The passage of a port; empty where its row was not read. */
  static Optional<PortPassage> of(String thread) {
    return Loaded.ALL.stream().filter(row -> row.thread.equals(thread)).findFirst();
  }
}
