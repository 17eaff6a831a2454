package org.airfit.lesson;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** Lines and points over two axes, as SVG. Series differ by dash and mark, never by colour alone. */
public final class Plot {

  private static final double LEFT = 70.0;
  private static final double RIGHT = 20.0;
  private static final double TOP = 34.0;
  private static final double HEIGHT = 300.0;
  private static final double LEGEND_LINE = 20.0;
  private static final int STEPS = 120;
  private static final int POINTS_IN_WORDS = 8;

  private static final List<String> DASHES = List.of("", "8 4", "2 3", "10 3 2 3", "14 4");
  private static final List<String> INKS =
      List.of("#1b4f8a", "#a03d0c", "#1f6b3a", "#5b2a86", "#333333");

  private final String title;
  private final String across;
  private final String up;
  private final List<Series> series = new ArrayList<>();
  private final List<Mark> marks = new ArrayList<>();
  private boolean fromZero;
  private String shows = "";

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

  /**
   * Says what a person who cannot see the plot must know of it. If nothing is said, each series is told with its first
   * and its last place.
   *
   * @param sentence the sentence, such as "The loss grows with the square of the flow."
   * @return this
   */
  public Plot shows(String sentence) {
    shows = Objects.requireNonNull(sentence, "sentence");
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

  /**
   * {@return the drawing; a narrow one for telephones lies in its metadata, where the pages of the lessons find it}
   */
  public String svg() {
    return Drawing.withNarrow(svg(Drawing.WIDE), svg(Drawing.NARROW));
  }

  private String svg(double width) {
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
    boolean narrow = width < Drawing.WIDE;
    double left = narrow ? 56.0 : LEFT;
    double right = width - RIGHT;

    List<String> heading = Drawing.lines(title, narrow ? width - 16.0 : right - LEFT, true);
    double top = TOP + Drawing.LINE * (heading.size() - 1);
    double bottom = top + HEIGHT;
    List<List<String>> legend = series.stream()
        .map(one -> Drawing.lines(one.name(), right - left - 50.0, false))
        .toList();
    double rows = legend.stream()
        .mapToDouble(lines -> LEGEND_LINE + Drawing.LINE * (lines.size() - 1))
        .sum();
    StringBuilder svg = Drawing.begin(width, bottom + 56.0 + rows, inWords(high.decimals() + 1));
    for (int i = 0; i < heading.size(); i++) {
      Drawing.text(
          svg, narrow ? 8.0 : LEFT, 20 + Drawing.LINE * i, "start", "bold", heading.get(i));
    }
    for (double tick : high.ticks()) {
      double y = high.at(tick, bottom, top);
      Drawing.line(svg, left, y, right, y, "#cccccc", 0.8, "");
      Drawing.text(svg, left - 6, y + 4, "end", "normal", high.label(tick));
    }
    int every = narrow && wide.ticks().length * 38.0 > right - left ? 2 : 1;
    double[] across = wide.ticks();
    for (int i = 0; i < across.length; i += every) {
      double x = wide.at(across[i], left, right);
      Drawing.line(svg, x, bottom, x, bottom + 5, "#333333", 1, "");
      Drawing.text(svg, x, bottom + 18, "middle", "normal", wide.label(across[i]));
    }
    Drawing.line(svg, left, bottom, right, bottom, "#333333", 1.2, "");
    Drawing.line(svg, left, top, left, bottom, "#333333", 1.2, "");
    Drawing.text(svg, (left + right) / 2, bottom + 38, "middle", "normal", this.across);
    svg.append(
        Printed.text("<g transform=\"translate(16 %.1f) rotate(-90)\">", (top + bottom) / 2));
    Drawing.text(svg, 0, 0, "middle", "normal", up);
    svg.append("</g>\n");
    for (Mark mark : marks) {
      double y = high.at(mark.y(), bottom, top);
      Drawing.line(svg, left, y, right, y, "#333333", 1.2, "1 3");
    }
    double y = bottom + 60.0;
    for (int i = 0; i < series.size(); i++) {
      draw(svg, series.get(i), i, x -> wide.at(x, left, right), up -> high.at(up, bottom, top));
      String ink = INKS.get(i % INKS.size());
      if (series.get(i).joined()) {
        Drawing.line(svg, left, y - 4, left + 40, y - 4, ink, 2, DASHES.get(i % DASHES.size()));
      } else {
        Drawing.mark(svg, left + 20, y - 4, i, ink);
      }
      for (String line : legend.get(i)) {
        Drawing.text(svg, left + 50, y, "start", "normal", line);
        y += Drawing.LINE;
      }
      y += LEGEND_LINE - Drawing.LINE;
    }
    for (Mark mark : marks) {
      List<String> lines = Drawing.lines(mark.name(), right - left - 12.0, false);
      double foot = high.at(mark.y(), bottom, top) - 5 - Drawing.LINE * (lines.size() - 1);
      for (int i = 0; i < lines.size(); i++) {
        Drawing.label(svg, left + 6, foot + Drawing.LINE * i, lines.get(i));
      }
    }
    return svg.append("</svg>\n").toString();
  }

  private String inWords(int decimals) {
    StringBuilder words = new StringBuilder(title)
        .append(". Across: ")
        .append(across)
        .append("; up: ")
        .append(up);
    if (!shows.isEmpty()) {
      return words.append(". ").append(shows).toString();
    }
    for (Series one : series) {
      words.append(". ").append(one.name()).append(": ");
      List<Place> places = one.places();
      if (one.joined() || places.size() > POINTS_IN_WORDS) {
        words
            .append("from ")
            .append(inWords(places.get(0), decimals))
            .append(" to ")
            .append(inWords(places.get(places.size() - 1), decimals));
      } else {
        words.append(places.stream()
            .map(place -> inWords(place, decimals))
            .collect(Collectors.joining(", ")));
      }
    }
    marks.forEach(mark ->
        words.append(". ").append(mark.name()).append(": a level at ").append(digits(mark.y())));
    return words.append('.').toString();
  }

  /** A place with three digits, and with one decimal more than the axis where this tells more. */
  private static String inWords(Place place, int decimals) {
    String three = digits(place.y());
    String exact = Printed.text("%." + decimals + "f", place.y());
    return (exact.length() > three.length() && Math.abs(place.y()) >= 1.0 ? exact : three) + " at "
        + digits(place.x());
  }

  private static String digits(double value) {
    return Drawing.threeDigits(value);
  }

  private static void draw(
      StringBuilder svg, Series one, int i, DoubleUnaryOperator wide, DoubleUnaryOperator high) {
    String ink = INKS.get(i % INKS.size());
    StringBuilder path = new StringBuilder();
    for (Place place : one.places()) {
      double x = wide.applyAsDouble(place.x());
      double y = high.applyAsDouble(place.y());
      if (one.joined()) {
        path.append(Printed.text("%s%.1f %.1f", path.isEmpty() ? "M" : " L", x, y));
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
      return Printed.text("%." + decimals() + "f", tick + 0.0);
    }

    int decimals() {
      return Math.max(0, (int) Math.ceil(-Math.log10(step) - 1.0e-9));
    }
  }
}
