package org.airfit.calls;

import org.airfit.plug.Dimension;
import org.jspecify.annotations.Nullable;

/**
 * A plug, not to scale, with a mark for each of its sizes that can be tapped on and reached by keys, and with the jaws
 * of a caliper where one of them is taken. Lines have the colour of the text around, jaws that of {@code --run}.
 *
 * <p>Its proportions are our own: every step is wide enough for a finger.
 */
final class PlugSketch {

  private static final int WIDTH = 410;
  private static final int HEIGHT = 376;

  /** The face of the tip, and the axis. */
  private static final int TIP = 72;

  private static final int AXIS = 178;

  /** Where the steps end, seen from the face of the tip. */
  private static final int COLLAR = 88;

  private static final int GROOVE = 128;
  private static final int SHOULDER = 166;
  private static final int STOP = 232;
  private static final int BODY = 290;

  /** Half of the diameters. */
  private static final int TIP_HALF = 50;

  private static final int COLLAR_HALF = 64;
  private static final int GROOVE_HALF = 40;
  private static final int SHOULDER_HALF = 58;
  private static final int BODY_HALF = 72;
  private static final int BORE_HALF = 22;

  /** Labels stand so far apart that each has 24 units for a finger. */
  private static final int TIER = 26;

  private static final int HIT = 24;

  private final StringBuilder out = new StringBuilder();
  private final @Nullable Dimension chosen;

  private PlugSketch(@Nullable Dimension chosen) {
    this.chosen = chosen;
  }

  static String svg(@Nullable Dimension chosen) {
    PlugSketch sketch = new PlugSketch(chosen);
    sketch.draw();
    String shows = chosen == null
        ? "A plug with its nine sizes, not to scale"
        : "Where the caliper goes for the " + chosen.label() + ", " + chosen.definition();
    return "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 " + WIDTH + " " + HEIGHT
        + "\" role=\"group\" aria-label=\"" + shows
        + "\" font-family=\"Arial, Helvetica, sans-serif\" font-size=\"13\">\n" + sketch.out
        + "</svg>\n";
  }

  private void draw() {
    plug();
    // each line rises between the words of the tiers that it passes
    diameter(Dimension.TIP_DIAMETER, 40, TIP_HALF, 3, 40);
    diameter(Dimension.COLLAR_DIAMETER, 108, COLLAR_HALF, 2, 76);
    diameter(Dimension.GROOVE_DIAMETER, 147, GROOVE_HALF, 1, 147);
    diameter(Dimension.SHOULDER_DIAMETER, 200, SHOULDER_HALF, 2, 224);
    bore();
    length(Dimension.TIP_TO_COLLAR, 0, COLLAR, TIP_HALF, COLLAR_HALF, 1, 44);
    length(Dimension.GROOVE_WIDTH, GROOVE, SHOULDER, COLLAR_HALF, SHOULDER_HALF, 1, 226);
    length(Dimension.TIP_LENGTH, 0, GROOVE, TIP_HALF, COLLAR_HALF, 2, 64);
    length(Dimension.INSERTION_LENGTH, 0, STOP, TIP_HALF, BODY_HALF, 3, 116);
    if (chosen != null) {
      jaws(chosen);
    }
  }

  private static int x(int fromTip) {
    return TIP + fromTip;
  }

  private void plug() {
    int[][] steps = {
      {0, COLLAR, TIP_HALF},
      {COLLAR, GROOVE, COLLAR_HALF},
      {GROOVE, SHOULDER, GROOVE_HALF},
      {SHOULDER, STOP, SHOULDER_HALF}
    };
    StringBuilder upper = new StringBuilder();
    StringBuilder lower = new StringBuilder();
    StringBuilder edges = new StringBuilder();
    for (int[] step : steps) {
      upper.append(" L").append(x(step[0])).append(' ').append(AXIS - step[2]);
      upper.append(" L").append(x(step[1])).append(' ').append(AXIS - step[2]);
      lower.insert(
          0,
          " L" + x(step[1]) + " " + (AXIS + step[2]) + " L" + x(step[0]) + " " + (AXIS + step[2]));
      edges.append("M").append(x(step[0])).append(' ').append(AXIS - step[2]);
      edges.append('V').append(AXIS + step[2]);
    }
    out.append("<path d=\"M")
        .append(upper.substring(2))
        .append(lower)
        .append(
            "Z\" fill=\"currentColor\" fill-opacity=\"0.08\" stroke=\"currentColor\" stroke-width=\"1.6\"/>\n");
    line(edges.toString(), 1.0, "");
    String body = "M" + x(STOP) + " " + (AXIS - BODY_HALF) + "H" + x(BODY) + "M" + x(STOP) + " "
        + (AXIS + BODY_HALF) + "H" + x(BODY) + "M" + x(STOP) + " " + (AXIS - BODY_HALF) + "V"
        + (AXIS + BODY_HALF);
    line(body, 1.2, "");
    line(
        "M" + x(0) + " " + (AXIS - BORE_HALF) + "H" + x(STOP) + "M" + x(0) + " "
            + (AXIS + BORE_HALF) + "H" + x(STOP),
        0.9,
        "5 3");
    line("M" + x(-14) + " " + AXIS + "H" + x(BODY + 8), 0.7, "12 3 3 3");
  }

  private void line(String d, double weight, String dashes) {
    out.append("<path d=\"")
        .append(d)
        .append("\" fill=\"none\" stroke=\"currentColor\" stroke-width=\"")
        .append(weight)
        .append(dashes.isEmpty() ? "" : "\" stroke-dasharray=\"" + dashes)
        .append("\"/>\n");
  }

  /** Opens the mark of a size; what stands in it is tapped on as one. */
  private void open(Dimension dimension) {
    boolean isChosen = dimension == chosen;
    out.append("<g class=\"size")
        .append(isChosen ? " chosen" : "")
        .append("\" data-size=\"")
        .append(dimension.label())
        .append("\" role=\"button\" tabindex=\"0\" aria-pressed=\"")
        .append(isChosen)
        .append("\" aria-label=\"")
        .append(dimension.label())
        .append(", ")
        .append(dimension.definition())
        .append("\">\n");
  }

  private void close() {
    out.append("</g>\n");
  }

  /** The words of a mark, with room for a finger around them. */
  private void words(Dimension dimension, int x, int y, String anchor) {
    int wide = 7 * dimension.label().length() + 10;
    int left = anchor.equals("middle") ? x - wide / 2 : x - 5;
    out.append("<rect x=\"")
        .append(left)
        .append("\" y=\"")
        .append(y - 17)
        .append("\" width=\"")
        .append(wide)
        .append("\" height=\"")
        .append(HIT)
        .append("\" fill-opacity=\"0\"/>\n<text x=\"")
        .append(x)
        .append("\" y=\"")
        .append(y)
        .append("\" text-anchor=\"")
        .append(anchor)
        .append("\" fill=\"currentColor\"")
        .append(dimension == chosen ? " font-weight=\"bold\"" : "")
        .append('>')
        .append(dimension.label())
        .append("</text>\n");
  }

  private double weight(Dimension dimension) {
    return dimension == chosen ? 2.2 : 1.0;
  }

  /** A diameter: a line across the plug, led up to its words. */
  private void diameter(Dimension dimension, int at, int half, int tier, int words) {
    int shelf = 6 + TIER * tier;
    open(dimension);
    hit(x(at) - HIT / 2, AXIS - half, HIT, 2 * half);
    line("M" + x(at) + " " + (shelf + 4) + "V" + (AXIS + half), weight(dimension), "");
    arrow(x(at), AXIS - half, 0, -1);
    arrow(x(at), AXIS + half, 0, 1);
    words(dimension, x(words), shelf, "middle");
    close();
  }

  private void bore() {
    open(Dimension.BORE);
    int at = x(-22);
    hit(at - 34, AXIS - HIT, 52, 2 * HIT);
    line(
        "M" + at + " " + (AXIS - BORE_HALF) + "V" + (AXIS + BORE_HALF) + "M" + (at - 6) + " "
            + (AXIS - BORE_HALF) + "H" + x(0) + "M" + (at - 6) + " " + (AXIS + BORE_HALF) + "H"
            + x(0),
        weight(Dimension.BORE),
        "");
    arrow(at, AXIS - BORE_HALF, 0, -1);
    arrow(at, AXIS + BORE_HALF, 0, 1);
    words(Dimension.BORE, at - 22, AXIS + 5, "middle");
    close();
  }

  /** A length: a line below the plug between two uprights. */
  private void length(
      Dimension dimension, int from, int to, int halfFrom, int halfTo, int tier, int words) {
    int y = AXIS + BODY_HALF + 6 + (TIER + 6) * tier;
    open(dimension);
    line(
        "M" + x(from) + " " + (AXIS + halfFrom + 3) + "V" + (y + 4) + "M" + x(to) + " "
            + (AXIS + halfTo + 3) + "V" + (y + 4),
        0.7,
        "");
    hit(x(from), y - HIT / 2, Math.max(HIT, to - from), HIT);
    line("M" + x(from) + " " + y + "H" + x(to), weight(dimension), "");
    arrow(x(from), y, -1, 0);
    arrow(x(to), y, 1, 0);
    if (dimension == Dimension.GROOVE_WIDTH) {
      // too narrow for its words: they stand behind the line that ends the longest size
      line("M" + x(to) + " " + y + "H" + x(STOP + 6), 0.7, "");
      words(dimension, x(STOP + 10), y + 5, "start");
    } else {
      words(dimension, x(words), y - 5, "middle");
    }
    close();
  }

  private void hit(int x, int y, int width, int height) {
    out.append("<rect x=\"")
        .append(x)
        .append("\" y=\"")
        .append(y)
        .append("\" width=\"")
        .append(width)
        .append("\" height=\"")
        .append(height)
        .append("\" fill-opacity=\"0\"/>\n");
  }

  /** An arrowhead with its point at x, y, pointing along dx, dy. */
  private void arrow(int x, int y, int dx, int dy) {
    out.append("<path d=\"M")
        .append(x)
        .append(' ')
        .append(y)
        .append('L')
        .append(x - 8 * dx + 3 * dy)
        .append(' ')
        .append(y - 8 * dy + 3 * dx)
        .append('L')
        .append(x - 8 * dx - 3 * dy)
        .append(' ')
        .append(y - 8 * dy - 3 * dx)
        .append("Z\" fill=\"currentColor\"/>\n");
  }

  /** The jaws, as the size's own words tell how it is measured. */
  private void jaws(Dimension dimension) {
    out.append("<g class=\"jaws\" fill=\"var(--run, #1d4e6b)\" fill-opacity=\"0.85\""
        + " stroke=\"none\" aria-hidden=\"true\">\n");
    switch (dimension) {
      case TIP_DIAMETER -> outside(40, TIP_HALF, 14);
      case COLLAR_DIAMETER -> outside(108, COLLAR_HALF, 14);
      case SHOULDER_DIAMETER -> outside(200, SHOULDER_HALF, 14);
      case GROOVE_DIAMETER -> outside(147, GROOVE_HALF, 5);
      case BORE -> inside();
      case GROOVE_WIDTH -> blades();
      case TIP_TO_COLLAR -> rod(COLLAR, TIP_HALF, COLLAR_HALF);
      case TIP_LENGTH -> rod(GROOVE, GROOVE_HALF, COLLAR_HALF);
      case INSERTION_LENGTH -> rod(STOP, SHOULDER_HALF, BODY_HALF);
    }
    out.append("</g>\n");
  }

  private void jaw(int... points) {
    out.append("<path d=\"");
    for (int i = 0; i < points.length; i += 2) {
      out.append(i == 0 ? 'M' : 'L').append(points[i]).append(' ').append(points[i + 1]);
    }
    out.append("Z\"/>\n");
  }

  /** Two jaws with the plug between them. */
  private void outside(int at, int half, int wide) {
    for (int side : new int[] {-1, 1}) {
      int near = AXIS + side * half;
      jaw(
          x(at) - wide,
          near,
          x(at) + wide,
          near,
          x(at) + wide,
          near + 34 * side,
          x(at) + wide - 4,
          near + 40 * side,
          x(at) - wide + 4,
          near + 40 * side,
          x(at) - wide,
          near + 34 * side);
    }
  }

  /** Two jaws that spread in the bore. */
  private void inside() {
    for (int side : new int[] {-1, 1}) {
      int wall = AXIS + side * BORE_HALF;
      jaw(
          x(30),
          wall,
          x(30),
          wall - 6 * side,
          x(-12),
          wall - 14 * side,
          x(-12),
          wall - 2 * side,
          x(-6),
          wall);
    }
  }

  /** Two blades that spread between the walls of the groove, from above. */
  private void blades() {
    int top = AXIS - COLLAR_HALF - 30;
    jaw(
        x(GROOVE),
        AXIS - GROOVE_HALF - 4,
        x(GROOVE),
        top,
        x(GROOVE) + 12,
        top,
        x(GROOVE) + 6,
        AXIS - GROOVE_HALF - 4);
    jaw(
        x(SHOULDER),
        AXIS - GROOVE_HALF - 4,
        x(SHOULDER),
        top,
        x(SHOULDER) - 12,
        top,
        x(SHOULDER) - 6,
        AXIS - GROOVE_HALF - 4);
  }

  /** One jaw on the face of the tip, the other on the face of a step: below, as the lengths stand there. */
  private void rod(int to, int from, int step) {
    int beam = AXIS + BODY_HALF + 10;
    jaw(x(0), AXIS + TIP_HALF - 20, x(0), beam, x(-12), beam, x(-8), AXIS + TIP_HALF - 20);
    boolean isBehind = from < step && to == GROOVE;
    int inner = AXIS + (isBehind ? GROOVE_HALF + 6 : from + 4);
    int back = isBehind ? 10 : -10;
    jaw(x(to), inner, x(to), beam, x(to + back), beam, x(to + back / 2), inner);
    jaw(
        x(-12),
        beam,
        x(Math.max(to, to + back)),
        beam,
        x(Math.max(to, to + back)),
        beam + 7,
        x(-12),
        beam + 7);
  }
}
