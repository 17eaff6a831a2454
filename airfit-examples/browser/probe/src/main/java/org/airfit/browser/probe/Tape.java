package org.airfit.browser.probe;

/** What a probe found: a line for each value, its name, whether it is a number or a text, and the value. */
final class Tape {

  private final StringBuilder lines = new StringBuilder();
  private String group = "";
  private int count;

  /** Begins a group of values. */
  void group(String name) {
    group = name;
    count = 0;
  }

  void number(double value) {
    line('#', Double.toString(value));
  }

  void text(String value) {
    line('"', value.replace("\\", "\\\\").replace("\n", "\\n"));
  }

  private void line(char kind, String value) {
    lines
        .append(group)
        .append(' ')
        .append(count++)
        .append(' ')
        .append(kind)
        .append(value)
        .append('\n');
  }

  @Override
  public String toString() {
    return lines.toString();
  }
}
