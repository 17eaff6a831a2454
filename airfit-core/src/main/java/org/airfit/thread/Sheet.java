package org.airfit.thread;

import org.airfit.internal.Digits;

/** Collects the elements of an SVG drawing; units are millimetres. Not thread-safe. */
final class Sheet {

  private static final double ARROW = 1.7;
  private static final double ARROW_HALF = 0.32;

  private final StringBuilder out = new StringBuilder();

  static String n(double value) {
    return Digits.significant(Math.rint(value * 1000.0) / 1000.0, 7);
  }

  private static String escaped(String text) {
    return text.replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;");
  }

  void path(String d, String fill, String stroke, double weight) {
    out.append("<path d=\"").append(d).append("\" fill=\"").append(fill).append('"');
    if (weight > 0.0) {
      out.append(" stroke=\"")
          .append(stroke)
          .append("\" stroke-width=\"")
          .append(n(weight))
          .append("\" stroke-linejoin=\"round\"");
    }
    out.append("/>\n");
  }

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
    out.append("<text x=\"")
        .append(n(x))
        .append("\" y=\"")
        .append(n(y))
        .append("\" text-anchor=\"")
        .append(anchor)
        .append("\" font-size=\"")
        .append(n(size))
        .append('"')
        .append(more.isEmpty() ? "" : " " + more)
        .append('>')
        .append(escaped(content))
        .append("</text>\n");
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

  String svg(double width, double height, String label, double size, String ink) {
    return "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"" + n(width) + "mm\" height=\""
        + n(height) + "mm\" viewBox=\"0 0 " + n(width) + " " + n(height)
        + "\" role=\"img\" aria-label=\"" + escaped(label)
        + "\" font-family=\"Helvetica, Arial, sans-serif\" font-size=\"" + n(size) + "\" fill=\""
        + ink + "\">\n" + out + "</svg>\n";
  }
}
