package org.airfit.lesson;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;

/** The few marks of SVG that plots are made of. */
final class Drawing {

  /** The width of a drawing beside text, and of one on a telephone. */
  static final double WIDE = 680.0;

  static final double NARROW = 340.0;

  /** From one line of text to the next. */
  static final double LINE = 16.0;

  private static final double LETTER = 7.2;
  private static final double BOLD_LETTER = 8.1;

  private Drawing() {}

  /** The wide drawing with the narrow one in its metadata. */
  static String withNarrow(String wide, String narrow) {
    return wide.replaceFirst(
        "</svg>\\n$",
        Matcher.quoteReplacement("<metadata>" + narrow.strip() + "</metadata>\n</svg>\n"));
  }

  /** The text in lines that fit into a width. */
  static List<String> lines(String text, double width, boolean bold) {
    int most = Math.max(8, (int) (width / (bold ? BOLD_LETTER : LETTER)));
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    for (String word : text.split(" ", -1)) {
      if (!line.isEmpty() && line.length() + 1 + word.length() > most) {
        lines.add(line.toString());
        line.setLength(0);
      }
      line.append(line.isEmpty() ? "" : " ").append(word);
    }
    lines.add(line.toString());
    return lines;
  }

  /** A number for a sentence: three digits that count, and no more zeros than it needs. */
  static String threeDigits(double value) {
    if (value == 0.0) {
      return "0";
    }
    int after = Math.max(0, 2 - (int) Math.floor(Math.log10(Math.abs(value))));
    String text = Printed.text("%." + Math.min(after, 9) + "f", value);
    return text.contains(".") ? text.replaceAll("0+$", "").replaceAll("\\.$", "") : text;
  }

  static StringBuilder begin(double width, double height, String shows) {
    return new StringBuilder(Printed.text(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%.0f\" height=\"%.0f\" viewBox=\"0 0 %.0f %.0f\""
            + " role=\"img\" aria-label=\"%s\" font-family=\"DejaVu Sans, Arial, sans-serif\""
            + " font-size=\"13\">\n"
            + "<rect width=\"100%%\" height=\"100%%\" fill=\"#ffffff\"/>\n",
        width, height, width, height, escaped(shows).replace("\"", "&quot;")));
  }

  static void text(
      StringBuilder svg, double x, double y, String anchor, String weight, String text) {
    svg.append(Printed.text(
        "<text x=\"%.1f\" y=\"%.1f\" text-anchor=\"%s\" font-weight=\"%s\" fill=\"#111111\">%s</text>\n",
        x, y, anchor, weight, escaped(text)));
  }

  /** Text that stays readable where a line runs through it. */
  static void label(StringBuilder svg, double x, double y, String text) {
    svg.append(Printed.text(
        "<text x=\"%.1f\" y=\"%.1f\" fill=\"#111111\" stroke=\"#ffffff\" stroke-width=\"4\""
            + " paint-order=\"stroke\">%s</text>\n",
        x, y, escaped(text)));
  }

  static void line(
      StringBuilder svg,
      double x1,
      double y1,
      double x2,
      double y2,
      String ink,
      double width,
      String dash) {
    svg.append(Printed.text(
        "<line x1=\"%.1f\" y1=\"%.1f\" x2=\"%.1f\" y2=\"%.1f\" stroke=\"%s\" stroke-width=\"%.1f\"%s/>\n",
        x1, y1, x2, y2, ink, width, dashed(dash)));
  }

  static void path(StringBuilder svg, String path, String ink, String dash) {
    svg.append(Printed.text(
        "<path d=\"%s\" fill=\"none\" stroke=\"%s\" stroke-width=\"2\"%s/>\n",
        path, ink, dashed(dash)));
  }

  static void box(StringBuilder svg, double x, double y, double width, double height) {
    svg.append(Printed.text(
        "<rect x=\"%.1f\" y=\"%.1f\" width=\"%.1f\" height=\"%.1f\" fill=\"#9db7d3\" stroke=\"#1b4f8a\"/>\n",
        x, y, width, height));
  }

  /** Circle, square, triangle, diamond in turn. */
  static void mark(StringBuilder svg, double x, double y, int kind, String ink) {
    String path = switch (kind % 4) {
      case 0 -> "M-5 0 A5 5 0 1 0 5 0 A5 5 0 1 0 -5 0 Z";
      case 1 -> "M-4.5 -4.5 H4.5 V4.5 H-4.5 Z";
      case 2 -> "M0 -5.5 L5.5 4.5 H-5.5 Z";
      default -> "M0 -6 L6 0 L0 6 L-6 0 Z";
    };
    svg.append(Printed.text(
        "<path d=\"%s\" transform=\"translate(%.1f %.1f)\" fill=\"#ffffff\" stroke=\"%s\" stroke-width=\"2\"/>\n",
        path, x, y, ink));
  }

  private static String dashed(String dash) {
    return dash.isEmpty() ? "" : " stroke-dasharray=\"" + dash + "\"";
  }

  private static String escaped(String text) {
    return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
  }
}
