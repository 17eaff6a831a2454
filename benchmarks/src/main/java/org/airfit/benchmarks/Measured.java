package org.airfit.benchmarks;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * All that one call of the command measured, as it is kept in a file: from it the page is written, and can be written
 * again without measuring.
 *
 * @param machine the machine and its JVM, in words
 * @param date the day
 * @param figures what each benchmark took, by its name and parameters
 * @param program what the program took
 */
record Measured(
    String machine,
    String date,
    Map<String, Performance.Figure> figures,
    ProgramStart.Medians program) {

  private static final String HEAD = "name,nanoseconds,error,bytes";

  /** Writes it as a file of commas, the machine and the day in front. */
  void write(Path file) throws IOException {
    List<String> lines = new ArrayList<>(List.of("# " + machine, "# " + date, HEAD));
    figures.forEach((name, figure) -> lines.add(String.join(
        ",", name, text(figure.nanoseconds()), text(figure.error()), text(figure.bytes()))));
    lines.add("program empty," + program.empty() + ",,");
    lines.add("program plain," + program.plain() + ",,");
    lines.add("program archived," + program.archived() + ",,");
    lines.add("program loading," + program.loading() + ",,");
    lines.add("program loadingArchived," + program.loadingArchived() + ",,");
    lines.add("program ownClasses," + program.ownClasses() + ",,");
    lines.add("program jdkClasses," + program.jdkClasses() + ",,");
    Files.writeString(file, String.join("\n", lines) + "\n");
  }

  /** Reads what {@link #write} wrote. */
  static Measured read(Path file) throws IOException {
    List<String> lines = Files.readAllLines(file);
    Map<String, Performance.Figure> figures = new TreeMap<>();
    for (String line : lines.subList(lines.indexOf(HEAD) + 1, lines.size())) {
      String[] cells = line.split(",", -1);
      figures.put(
          cells[0], new Performance.Figure(value(cells[1]), value(cells[2]), value(cells[3])));
    }
    ProgramStart.Medians program = new ProgramStart.Medians(
        taken(figures, "empty"),
        taken(figures, "plain"),
        taken(figures, "archived"),
        taken(figures, "loading"),
        taken(figures, "loadingArchived"),
        (int) taken(figures, "ownClasses"),
        (int) taken(figures, "jdkClasses"));
    return new Measured(lines.get(0).substring(2), lines.get(1).substring(2), figures, program);
  }

  private static double taken(Map<String, Performance.Figure> figures, String of) {
    Performance.Figure figure = figures.remove("program " + of);
    if (figure == null) {
      throw new IllegalStateException("no figure of the program's " + of + ": measure again");
    }
    return figure.nanoseconds();
  }

  private static String text(double value) {
    return Double.isNaN(value) ? "" : Double.toString(value);
  }

  private static double value(String cell) {
    return cell.isEmpty() ? Double.NaN : Double.parseDouble(cell);
  }
}
