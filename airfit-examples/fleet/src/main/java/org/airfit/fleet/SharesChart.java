package org.airfit.fleet;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Rows of bars, each divided into parts of some kinds, as SVG; the numbers stand beside them. */
final class SharesChart {

  private static final int WIDE = 760;
  private static final int LINE = 26;
  private static final int TOP = 36;
  private static final int LEGEND = 30;
  private static final int NUMBERS = 110;
  private static final int BAR = 18;
  private static final double LETTER = 7.4;

  /** Told apart without colour too: they grow darker from enough to starved. */
  private static final List<String> COLOURS =
      List.of("#bfdcc8", "#8fb8de", "#d9c66b", "#d98b4a", "#8c2f39", "#888888");

  private final String title;
  private final List<String> kinds;
  private final boolean isShare;
  private final List<Bar> bars = new ArrayList<>();

  private record Bar(String name, List<Long> counts) {

    long sum() {
      return counts.stream().mapToLong(Long::longValue).sum();
    }
  }

  /**
   * Starts a chart.
   *
   * @param title what it shows
   * @param kinds what the parts of a bar are
   * @param isShare whether all bars are equally long, or as long as they count
   */
  SharesChart(String title, List<String> kinds, boolean isShare) {
    this.title = title;
    this.kinds = List.copyOf(kinds);
    this.isShare = isShare;
  }

  /** Adds a bar. */
  void bar(String name, List<Long> counts) {
    bars.add(new Bar(name, List.copyOf(counts)));
  }

  /** The drawing. */
  String svg() {
    int longest = bars.stream().mapToInt(bar -> bar.name().length()).max().orElse(0);
    double left = Math.max(90, 18 + LETTER * longest);
    double room = WIDE - left - NUMBERS;
    long most = bars.stream().mapToLong(Bar::sum).max().orElse(1);
    StringBuilder svg = new StringBuilder();
    int top = kinds.size() > 1 ? TOP + LEGEND : TOP;
    int high = top + LINE * bars.size() + 8;
    svg.append(String.format(
        Locale.ROOT,
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %d %d\" width=\"%d\""
            + " height=\"%d\" role=\"img\" font-family=\"sans-serif\" font-size=\"13\">%n"
            + "<title>%s</title>%n<rect width=\"100%%\" height=\"100%%\" fill=\"#ffffff\"/>%n",
        WIDE,
        high,
        WIDE,
        high,
        escaped(title)));
    text(svg, 10, 20, "start", "bold", title);
    legend(svg);
    for (int i = 0; i < bars.size(); i++) {
      draw(svg, bars.get(i), left, room, top + LINE * i, most);
    }
    return svg.append("</svg>\n").toString();
  }

  private void legend(StringBuilder svg) {
    double x = 10;
    for (int kind = 0; kind < kinds.size() && kinds.size() > 1; kind++) {
      box(svg, x, 34, 14, 14, kind);
      text(svg, x + 19, 46, "start", "normal", kinds.get(kind));
      x += 34 + LETTER * kinds.get(kind).length();
    }
  }

  private void draw(StringBuilder svg, Bar bar, double left, double room, double y, long most) {
    text(svg, left - 8, y + 14, "end", "normal", bar.name());
    double whole = isShare ? room : room * bar.sum() / Math.max(1, most);
    double x = left;
    for (int kind = 0; kind < bar.counts().size(); kind++) {
      double length = bar.sum() == 0 ? 0.0 : whole * bar.counts().get(kind) / bar.sum();
      box(svg, x, y, length, BAR, kind);
      x += length;
    }
    text(svg, x + 6, y + 14, "start", "normal", String.format(Locale.ROOT, "%,d", bar.sum()));
  }

  private static void box(StringBuilder svg, double x, double y, double w, double h, int kind) {
    svg.append(String.format(
        Locale.ROOT,
        "<rect x=\"%.1f\" y=\"%.1f\" width=\"%.1f\" height=\"%.1f\" fill=\"%s\""
            + " stroke=\"#444444\" stroke-width=\"0.5\"/>%n",
        x,
        y,
        w,
        h,
        COLOURS.get(kind % COLOURS.size())));
  }

  private static void text(
      StringBuilder svg, double x, double y, String anchor, String weight, String words) {
    svg.append(String.format(
        Locale.ROOT,
        "<text x=\"%.1f\" y=\"%.1f\" text-anchor=\"%s\" font-weight=\"%s\""
            + " fill=\"#222222\">%s</text>%n",
        x,
        y,
        anchor,
        weight,
        escaped(words)));
  }

  /** Names come from files: nothing in them is markup. */
  static String escaped(String text) {
    return text.replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;");
  }
}
