package org.airfit.drawing;

import org.airfit.internal.SvgWriter;

/** Draws threads: lines, dots and dimension lines. Not thread-safe. */
final class ThreadSvg extends SvgWriter {

  /** The index of a symbol, 7 pt as the smallest print, and how low it stands [mm]. */
  private static final double INDEX = 2.5;

  private static final double DROP = 0.8;

  private static final double ARROW = 1.7;
  private static final double ARROW_HALF = 0.32;

  void line(double x1, double y1, double x2, double y2, String colour, double weight, String more) {
    out.append("<path d=\"M")
        .append(n(x1))
        .append(' ')
        .append(n(y1))
        .append('L')
        .append(n(x2))
        .append(' ')
        .append(n(y2))
        .append("\" fill=\"none\" stroke=\"")
        .append(colour)
        .append("\" stroke-width=\"")
        .append(n(weight))
        .append('"')
        .append(more.isEmpty() ? "" : " " + more)
        .append("/>\n");
  }

  void dot(double x, double y, String colour) {
    out.append("<circle cx=\"")
        .append(n(x))
        .append("\" cy=\"")
        .append(n(y))
        .append("\" r=\"0.7\" fill=\"")
        .append(colour)
        .append("\"/>\n");
  }

  /** A dimension line with an arrowhead at either end. */
  void measure(double from, double to, double y, String colour) {
    line(from, y, to, y, colour, 0.15, "");
    arrow(from, y, 1.0, colour);
    arrow(to, y, -1.0, colour);
  }

  private void arrow(double x, double y, double into, String colour) {
    double back = x + into * ARROW;
    path(
        "M" + n(x) + " " + n(y) + "L" + n(back) + " " + n(y - ARROW_HALF) + "V" + n(y + ARROW_HALF)
            + "Z",
        colour,
        "",
        0.0);
  }

  void text(double x, double y, String anchor, double size, String more, String content) {
    textOf(x, y, anchor, size, more, low(escaped(content)));
  }

  /** Sets the index of a symbol low: "E_1 here" has a low 1. */
  private static String low(String escaped) {
    int mark = escaped.indexOf('_');
    if (mark < 0) {
      return escaped;
    }
    String rest = escaped.substring(mark + 2);
    return escaped.substring(0, mark) + "<tspan dy=\"" + n(DROP) + "\" font-size=\"" + n(INDEX)
        + "\">" + escaped.charAt(mark + 1) + "</tspan>"
        + (rest.isEmpty() ? "" : "<tspan dy=\"" + n(-DROP) + "\">" + rest + "</tspan>");
  }

  /** A text with a white edge, so that lines behind it give way. */
  void label(double x, double y, String anchor, double size, String more, String content) {
    text(
        x,
        y,
        anchor,
        size,
        "stroke=\"#ffffff\" stroke-width=\"1\" stroke-linejoin=\"round\" paint-order=\"stroke\""
            + (more.isEmpty() ? "" : " " + more),
        content);
  }
}
