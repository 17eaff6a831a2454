package org.airfit.lesson;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;

/** Lines and points over two axes, as SVG. Series differ by dash and mark, never by colour alone. */
public final class Plot {

  private static final double WIDTH = 680.0;
  private static final double LEFT = 70.0;
  private static final double RIGHT = 20.0;
  private static final double TOP = 34.0;
  private static final double HEIGHT = 300.0;
  private static final double LEGEND_LINE = 20.0;
  private static final int STEPS = 120;

  private static final List<String> DASHES = List.of("", "8 4", "2 3", "10 3 2 3", "14 4");
  private static final List<String> INKS =
      List.of("#1b4f8a", "#a03d0c", "#1f6b3a", "#5b2a86", "#333333");

  private final String title;
  private final String across;
  private final String up;
  private final List<Series> series = new ArrayList<>();
  private final List<Mark> marks = new ArrayList<>();
  private boolean fromZero;

  private record Place(double x, double y) {}

  private record Series(String name, List<Place> places, boolean joined) {}

  private record Mark(String name, double y) {}

  private Plot(String title, String across, String up) {
    this.title = title;
    this.across = across;
    this.up = up;
  }

  /**
   * Starts a plot.
   *
   * @param title what it shows
   * @param across the horizontal axis with its unit, such as "flow [scfm]"
   * @param up the vertical axis with its unit
   * @return the plot, without series
   */
  public static Plot of(String title, String across, String up) {
    return new Plot(title, across, up);
  }

  /**
   * Adds a line through given places.
   *
   * @param name its name in the legend
   * @param x the places along the horizontal axis
   * @param y as many along the vertical one
   * @return this
   * @throws IllegalArgumentException if the numbers differ in count or one of them is not finite
   */
  public Plot line(String name, double[] x, double[] y) {
    return add(name, x, y, true);
  }

  /**
   * Adds a function.
   *
   * @param name its name in the legend
   * @param from where it begins
   * @param to where it ends
   * @param function the function; finite between them
   * @return this
   */
  public Plot curve(String name, double from, double to, DoubleUnaryOperator function) {
    double[] x = IntStream.rangeClosed(0, STEPS)
        .mapToDouble(i -> from + (to - from) * i / STEPS)
        .toArray();
    return add(
        name,
        x,
        IntStream.rangeClosed(0, STEPS)
            .mapToDouble(i -> function.applyAsDouble(x[i]))
            .toArray(),
        true);
  }

  /**
   * Adds points that are not joined.
   *
   * @param name their name in the legend
   * @param x the places along the horizontal axis
   * @param y as many along the vertical one
   * @return this
   * @throws IllegalArgumentException if the numbers differ in count or one of them is not finite
   */
  public Plot points(String name, double[] x, double[] y) {
    return add(name, x, y, false);
  }

  /**
   * Draws a level across the plot, with its name on it.
   *
   * @param name what the level is
   * @param y where it lies
   * @return this
   */
  public Plot level(String name, double y) {
    marks.add(new Mark(name, y));
    return this;
  }

  /**
   * Lets the vertical axis begin at zero.
   *
   * @return this
   */
  public Plot fromZero() {
    fromZero = true;
    return this;
  }

  private Plot add(String name, double[] x, double[] y, boolean joined) {
    if (x.length != y.length) {
      throw new IllegalArgumentException(
          "y of " + name + " must have " + x.length + " values, had " + y.length);
    }
    List<Place> places = new ArrayList<>();
    for (int i = 0; i < x.length; i++) {
      if (!Double.isFinite(x[i]) || !Double.isFinite(y[i])) {
        throw new IllegalArgumentException(
            name + " must be finite, was (" + x[i] + ", " + y[i] + ")");
      }
      places.add(new Place(x[i], y[i]));
    }
    series.add(new Series(name, List.copyOf(places), joined));
    return this;
  }

  /** {@return the drawing} */
  public String svg() {
    Range wide = new Range();
    Range high = new Range();
    for (Series one : series) {
      one.places().forEach(place -> {
        wide.include(place.x());
        high.include(place.y());
      });
    }
    marks.forEach(mark -> high.include(mark.y()));
    if (fromZero) {
      high.include(0.0);
    }
    wide.round();
    high.round();

    double bottom = TOP + HEIGHT;
    double height = bottom + 56.0 + LEGEND_LINE * series.size();
    StringBuilder svg = Drawing.begin(WIDTH, height, title);
    Drawing.text(svg, LEFT, 20, "start", "bold", title);
    for (double tick : high.ticks()) {
      double y = high.at(tick, bottom, TOP);
      Drawing.line(svg, LEFT, y, WIDTH - RIGHT, y, "#cccccc", 0.8, "");
      Drawing.text(svg, LEFT - 6, y + 4, "end", "normal", high.label(tick));
    }
    for (double tick : wide.ticks()) {
      double x = wide.at(tick, LEFT, WIDTH - RIGHT);
      Drawing.line(svg, x, bottom, x, bottom + 5, "#333333", 1, "");
      Drawing.text(svg, x, bottom + 18, "middle", "normal", wide.label(tick));
    }
    Drawing.line(svg, LEFT, bottom, WIDTH - RIGHT, bottom, "#333333", 1.2, "");
    Drawing.line(svg, LEFT, TOP, LEFT, bottom, "#333333", 1.2, "");
    Drawing.text(svg, (LEFT + WIDTH - RIGHT) / 2, bottom + 38, "middle", "normal", across);
    svg.append(String.format(
        Locale.ROOT, "<g transform=\"translate(16 %.1f) rotate(-90)\">", (TOP + bottom) / 2));
    Drawing.text(svg, 0, 0, "middle", "normal", up);
    svg.append("</g>\n");
    for (Mark mark : marks) {
      double y = high.at(mark.y(), bottom, TOP);
      Drawing.line(svg, LEFT, y, WIDTH - RIGHT, y, "#333333", 1.2, "1 3");
    }
    for (int i = 0; i < series.size(); i++) {
      draw(svg, series.get(i), i, wide, high, bottom);
      double y = bottom + 60.0 + LEGEND_LINE * i;
      String ink = INKS.get(i % INKS.size());
      if (series.get(i).joined()) {
        Drawing.line(svg, LEFT, y - 4, LEFT + 40, y - 4, ink, 2, DASHES.get(i % DASHES.size()));
      } else {
        Drawing.mark(svg, LEFT + 20, y - 4, i, ink);
      }
      Drawing.text(svg, LEFT + 50, y, "start", "normal", series.get(i).name());
    }
    for (Mark mark : marks) {
      Drawing.label(svg, LEFT + 6, high.at(mark.y(), bottom, TOP) - 5, mark.name());
    }
    return svg.append("</svg>\n").toString();
  }

  private static void draw(
      StringBuilder svg, Series one, int i, Range wide, Range high, double bottom) {
    String ink = INKS.get(i % INKS.size());
    StringBuilder path = new StringBuilder();
    for (Place place : one.places()) {
      double x = wide.at(place.x(), LEFT, WIDTH - RIGHT);
      double y = high.at(place.y(), bottom, TOP);
      if (one.joined()) {
        path.append(String.format(Locale.ROOT, "%s%.1f %.1f", path.isEmpty() ? "M" : " L", x, y));
      } else {
        Drawing.mark(svg, x, y, i, ink);
      }
    }
    if (one.joined()) {
      Drawing.path(svg, path.toString(), ink, DASHES.get(i % DASHES.size()));
    }
  }

  /** The span of an axis, widened to round numbers. */
  private static final class Range {

    private static final int TICKS = 6;

    private double low = Double.POSITIVE_INFINITY;
    private double high = Double.NEGATIVE_INFINITY;
    private double step = 1.0;

    void include(double value) {
      low = Math.min(low, value);
      high = Math.max(high, value);
    }

    void round() {
      if (!(low < high)) {
        low = Double.isFinite(low) ? low - 0.5 : 0.0;
        high = low + 1.0;
      }
      double rough = (high - low) / TICKS;
      double power = Math.pow(10.0, Math.floor(Math.log10(rough)));
      step = power
          * (rough / power <= 1.0
              ? 1.0
              : rough / power <= 2.0 ? 2.0 : rough / power <= 5.0 ? 5.0 : 10.0);
      low = step * Math.floor(low / step + 1.0e-9);
      high = step * Math.ceil(high / step - 1.0e-9);
    }

    double at(double value, double start, double end) {
      return start + (end - start) * (value - low) / (high - low);
    }

    double[] ticks() {
      int count = (int) Math.round((high - low) / step);
      return IntStream.rangeClosed(0, count).mapToDouble(i -> low + i * step).toArray();
    }

    String label(double tick) {
      int digits = Math.max(0, (int) Math.ceil(-Math.log10(step) - 1.0e-9));
      return String.format(Locale.ROOT, "%." + digits + "f", tick + 0.0);
    }
  }
}
