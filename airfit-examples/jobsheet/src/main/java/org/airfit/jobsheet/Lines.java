package org.airfit.jobsheet;

import java.util.Locale;
import org.airfit.files.Printable;

/** The lines of a sheet for a terminal, about a hundred characters wide. */
final class Lines {

  private static final int WIDTH = 100;

  private final StringBuilder out = new StringBuilder();

  /** Adds a line as it is; a line end within makes no line of its own. */
  void line(String text) {
    out.append(text.replaceAll("[\\n\\r\\t]+", " ").stripTrailing()).append('\n');
  }

  void heading(String text) {
    line("");
    line(text.toUpperCase(Locale.ROOT));
    line("-".repeat(text.length()));
  }

  /** Adds a text wrapped at words; what follows the first line is indented under it. */
  void wrapped(String indent, String text) {
    String hanging = " ".repeat(indent.length());
    StringBuilder row = new StringBuilder(indent);
    boolean empty = true;
    for (String word : text.strip().split("\\s+", -1)) {
      if (!empty && row.length() + 1 + word.length() > WIDTH) {
        line(row.toString());
        row = new StringBuilder(hanging);
        empty = true;
      }
      row.append(empty ? "" : " ").append(word);
      empty = false;
    }
    line(row.toString());
  }

  /** Adds a line that is laid out already, wrapped only where it is too long. */
  void fitted(String text) {
    if (text.length() > WIDTH) {
      wrapped("", text);
    } else {
      line(text);
    }
  }

  /** Adds lines that are laid out already. */
  void add(String lines) {
    out.append(lines);
  }

  /** The lines, harmless to a terminal. */
  @Override
  public String toString() {
    return Printable.lines(out.toString());
  }
}
