package org.airfit.drawing;

import org.airfit.internal.SvgWriter;
import org.airfit.plug.Dimension;
import org.airfit.working.UnitSystem;

/** Draws plugs, their dimensions and rulers. Not thread-safe. */
final class PlugSvg extends SvgWriter {

  static final String INK = "#1d2429";
  static final String FINE = "#5d6a73";
  static final String METAL = "#eef1f2";

  /** What was read, and in which colour; dark enough to stay apart from the grey lines when printed in black. */
  static final String READ = "#a3262a";

  static final String BAND = "#cfe3dc";

  /** The size of letters: 11 px on a screen, 8.4 pt on paper [mm]. */
  static final double TEXT = 2.95;

  /** How far lines of text stand apart [mm]. */
  static final double LINE = 3.8;

  static final double RULER_LENGTH = 50.0;

  private static final double ARROW = 1.6;

  private final double width;
  private final double height;
  private final String label;

  PlugSvg(double width, double height, String label) {
    this.width = width;
    this.height = height;
    this.label = label;
  }

  /** Ends the element. */
  String close() {
    return svg(width, height, label, TEXT, INK);
  }

  /** Starts a group that is moved, never scaled. */
  void groupAt(double x, double y) {
    out.append("<g transform=\"translate(")
        .append(n(x))
        .append(' ')
        .append(n(y))
        .append(")\">\n");
  }

  void groupOf(String className, Dimension dimension) {
    out.append("<g class=\"")
        .append(className)
        .append("\" data-dimension=\"")
        .append(dimension.symbol())
        .append("\">\n");
  }

  void endGroup() {
    out.append("</g>\n");
  }

  /** Writes text; the content is escaped already or holds elements. */
  void text(double x, double y, String anchor, double size, String more, String content) {
    textOf(x, y, anchor, size, more, content);
  }

  /** Writes a sentence in as many lines as its width asks, and tells where the next line would stand. */
  double sentence(double x, double y, double width, String sentence) {
    double at = y;
    for (String line : Paragraph.lines(sentence, TEXT, width)) {
      text(x, at, "start", TEXT, fine(), escaped(line));
      at += LINE;
    }
    return at;
  }

  void rule(double x1, double y1, double x2, double y2, String colour, double weight) {
    path("M" + n(x1) + " " + n(y1) + "L" + n(x2) + " " + n(y2), "none", colour, weight);
  }

  void dashed(String d, String colour, double weight, String dashes) {
    out.append("<path d=\"")
        .append(d)
        .append("\" fill=\"none\" stroke=\"")
        .append(colour)
        .append("\" stroke-width=\"")
        .append(n(weight))
        .append("\" stroke-dasharray=\"")
        .append(dashes)
        .append("\"/>\n");
  }

  void box(double x, double y, double width, double height, String fill) {
    out.append("<rect x=\"")
        .append(n(x))
        .append("\" y=\"")
        .append(n(y))
        .append("\" width=\"")
        .append(n(width))
        .append("\" height=\"")
        .append(n(height))
        .append("\" fill=\"")
        .append(fill)
        .append("\"/>\n");
  }

  /** An arrowhead with its point at x, y, pointing along dx, dy. */
  void arrow(double x, double y, int dx, int dy) {
    double side = 0.28;
    String d = "M" + n(x) + " " + n(y) + "L" + n(x - ARROW * dx + side * dy) + " "
        + n(y - ARROW * dy + side * dx) + "L" + n(x - ARROW * dx - side * dy) + " "
        + n(y - ARROW * dy - side * dx) + "Z";
    path(d, FINE, FINE, 0.0);
  }

  /** A ruler of 50 mm or of 2 in from x, y to the right, its ticks downward. */
  void rulerAcross(double x, double y, UnitSystem units) {
    if (units == UnitSystem.US) {
      inchesAcross(x, y);
    } else {
      rulerAcross(x, y);
    }
  }

  /** Two inches in eighths. */
  private void inchesAcross(double x, double y) {
    StringBuilder ticks = new StringBuilder();
    for (int i = 0; i <= 16; i++) {
      double at = x + i * 25.4 / 8.0;
      double length = i % 8 == 0 ? 4.0 : i % 4 == 0 ? 3.0 : 2.0;
      ticks.append('M').append(n(at)).append(' ').append(n(y)).append('v').append(n(length));
      if (i % 8 == 0) {
        text(at, y + 6.8, "middle", TEXT, "", i == 16 ? "2 in" : Integer.toString(i / 8));
      }
    }
    path(ticks.toString(), "none", INK, 0.15);
    rule(x, y, x + 50.8, y, INK, 0.3);
  }

  /** A ruler of 50 mm from x, y to the right, its ticks downward. */
  void rulerAcross(double x, double y) {
    StringBuilder ticks = new StringBuilder();
    for (int i = 0; i <= RULER_LENGTH; i++) {
      ticks.append('M').append(n(x + i)).append(' ').append(n(y)).append('v').append(n(tick(i)));
      if (i % 10 == 0) {
        text(x + i, y + 6.8, "middle", TEXT, "", i == 50 ? "50 mm" : Integer.toString(i));
      }
    }
    path(ticks.toString(), "none", INK, 0.15);
    rule(x, y, x + RULER_LENGTH, y, INK, 0.3);
  }

  /** A ruler of 50 mm from x, y downward, its ticks to the left. */
  void rulerDown(double x, double y) {
    StringBuilder ticks = new StringBuilder();
    for (int i = 0; i <= RULER_LENGTH; i++) {
      ticks.append('M').append(n(x)).append(' ').append(n(y + i)).append('h').append(n(-tick(i)));
      if (i % 10 == 0) {
        text(x - 4.6, y + i + 0.9, "end", TEXT, "", Integer.toString(i));
      }
    }
    path(ticks.toString(), "none", INK, 0.15);
    rule(x, y, x, y + RULER_LENGTH, INK, 0.3);
  }

  private static double tick(int millimetre) {
    return millimetre % 10 == 0 ? 4.0 : millimetre % 5 == 0 ? 3.0 : 2.0;
  }

  /** The symbol of a dimension with its index set low, and what follows it. */
  static String label(Dimension dimension, String rest) {
    String symbol = dimension.symbol();
    return symbol.charAt(0) + "<tspan dy=\"0.8\" font-size=\"2.5\">" + symbol.substring(2)
        + "</tspan>"
        + (rest.isEmpty() ? "" : "<tspan dx=\"0.7\" dy=\"-0.8\">" + rest + "</tspan>");
  }

  static String fine() {
    return "fill=\"" + FINE + "\"";
  }

  /** A triangle whose tip is at a point and which points along dx, dy. */
  void triangle(double x, double y, int dx, int dy) {
    path(
        "M" + n(x) + " " + n(y) + "L" + n(x - 1.8 * dx + 0.9 * dy) + " "
            + n(y - 1.8 * dy + 0.9 * dx) + "L" + n(x - 1.8 * dx - 0.9 * dy) + " "
            + n(y - 1.8 * dy - 0.9 * dx) + "Z",
        READ,
        READ,
        0.0);
  }
}
