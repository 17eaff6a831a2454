package org.airfit;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;

/**
 * A table of how often answers were right in a simulation, for {@code docs/reliability.md}.
 *
 * <p>A simulation draws with a fixed seed, so that every run of the tests writes the same table; {@code
 * .ci/reliability} holds the document to it.
 */
public final class ReliabilityTable {

  private static final Path FOLDER = Path.of("target", "reliability");

  private ReliabilityTable() {}

  /**
   * Writes a table where {@code .ci/reliability} looks for it.
   *
   * @param section the section of the document it stands in, such as "threads"
   * @param headings the headings of its columns
   * @param rows the rows, each with as many cells as there are headings
   */
  public static void write(String section, List<String> headings, List<List<String>> rows) {
    Objects.requireNonNull(section, "section");
    StringBuilder text = new StringBuilder();
    line(text, headings);
    line(text, headings.stream().map(heading -> "---").toList());
    for (List<String> row : rows) {
      if (row.size() != headings.size()) {
        throw new IllegalArgumentException("a row of " + section + " must have " + headings.size()
            + " cells, has " + row.size() + ": " + row);
      }
      line(text, row);
    }
    try {
      Files.createDirectories(FOLDER);
      Files.writeString(FOLDER.resolve(section + ".md"), text.toString());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void line(StringBuilder text, List<String> cells) {
    text.append("| ").append(String.join(" | ", cells)).append(" |\n");
  }
}
