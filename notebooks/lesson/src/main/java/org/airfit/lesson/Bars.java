package org.airfit.lesson;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;

/** Named amounts as horizontal bars, as SVG. Each bar has its name and its number beside it. */
public final class Bars {

  private static final double LEAST_NAMES = 160.0;
  private static final double LETTER = 7.6;
  private static final double NUMBERS = 70.0;
  private static final double LINE = 28.0;
  private static final double TOP = 40.0;

  private final String title;
  private final String unit;
  private final int digits;
  private final List<Bar> bars = new ArrayList<>();
  private String shows = "";

  /** A bar without length tells in words why it has none. */
  private record Bar(String name, double amount, String instead) {}

  private Bars(String title, String unit, int digits) {
    this.title = title;
    this.unit = unit;
    this.digits = digits;
  }

  /**
   * Starts a chart.
   *
   * @param title what it shows
   * @param unit the unit of the amounts
   * @param digits how many digits to write after the point
   * @return the chart, without bars
   */
  public static Bars of(String title, String unit, int digits) {
    return new Bars(title, unit, digits);
  }

  /**
   * Adds a bar below the others.
   *
   * @param name what it is
   * @param amount how long it is, 0 or more
   * @return this
   * @throws IllegalArgumentException if {@code amount} is negative or not finite
   */
  public Bars bar(String name, double amount) {
    if (!(amount >= 0.0 && amount < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException(
          "amount must be in [0, infinity), was " + amount + " " + unit);
    }
    bars.add(new Bar(name, amount, ""));
    return this;
  }

  /**
   * Adds a line without a bar below the others, for what has no amount.
   *
   * @param name what it is
   * @param instead what is told instead of an amount, such as "choked"
   * @return this
   */
  public Bars none(String name, String instead) {
    bars.add(new Bar(name, 0.0, Objects.requireNonNull(instead, "instead")));
    return this;
  }

  /**
   * Says what a person who cannot see the chart must know of it beside the amounts, which are told anyway.
   *
   * @param sentence the sentence
   * @return this
   */
  public Bars shows(String sentence) {
    shows = Objects.requireNonNull(sentence, "sentence");
    return this;
  }

  /**
   * {@return the drawing; a narrow one for telephones lies in its metadata, where the pages of the lessons find it}
   */
  public String svg() {
    return Drawing.withNarrow(wide(), narrow());
  }

  private String wide() {
    int longest = bars.stream().mapToInt(bar -> bar.name().length()).max().orElse(0);
    double names = Math.max(LEAST_NAMES, 16.0 + LETTER * longest);
    double room = Drawing.WIDE - names - NUMBERS;
    StringBuilder svg = Drawing.begin(Drawing.WIDE, TOP + LINE * bars.size() + 6.0, inWords());
    Drawing.text(svg, 10, 20, "start", "bold", heading());
    for (int i = 0; i < bars.size(); i++) {
      double y = TOP + LINE * i;
      Drawing.text(svg, names - 8, y + 14, "end", "normal", bars.get(i).name());
      draw(svg, names, y, room, bars.get(i));
    }
    return svg.append("</svg>\n").toString();
  }

  /** Each name above its bar. */
  private String narrow() {
    List<String> heading = Drawing.lines(heading(), Drawing.NARROW - 16.0, true);
    List<List<String>> names = bars.stream()
        .map(bar -> Drawing.lines(bar.name(), Drawing.NARROW - 16.0, false))
        .toList();
    int lines = heading.size() + names.stream().mapToInt(List::size).sum();
    StringBuilder svg =
        Drawing.begin(Drawing.NARROW, 24.0 + Drawing.LINE * lines + LINE * bars.size(), inWords());
    double y = 20.0;
    for (String line : heading) {
      Drawing.text(svg, 8, y, "start", "bold", line);
      y += Drawing.LINE;
    }
    for (int i = 0; i < bars.size(); i++) {
      y += 6.0;
      for (String line : names.get(i)) {
        Drawing.text(svg, 8, y, "start", "normal", line);
        y += Drawing.LINE;
      }
      draw(svg, 8.0, y - 11.0, Drawing.NARROW - NUMBERS, bars.get(i));
      y += LINE - 6.0;
    }
    return svg.append("</svg>\n").toString();
  }

  private void draw(StringBuilder svg, double left, double y, double room, Bar bar) {
    double most = bars.stream().mapToDouble(Bar::amount).max().orElse(1.0);
    double length = most > 0.0 ? room * bar.amount() / most : 0.0;
    Drawing.box(svg, left, y, length, LINE - 10.0);
    Drawing.text(svg, left + length + 6, y + 14, "start", "normal", amount(bar));
  }

  private String heading() {
    return title + " [" + unit + "]";
  }

  private String amount(Bar bar) {
    return bar.instead().isEmpty()
        ? Printed.text("%." + digits + "f", bar.amount())
        : bar.instead();
  }

  private String inWords() {
    String amounts =
        bars.stream().map(bar -> bar.name() + " " + amount(bar)).collect(Collectors.joining("; "));
    return heading() + ": " + amounts + "." + (shows.isEmpty() ? "" : " " + shows);
  }
}
